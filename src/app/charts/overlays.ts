import { computed, signal } from '@preact/signals';
import type { Overlay } from '../../exchange/report/overlay.ts';
import { planOverlay } from '../../exchange/report/planOverlay.ts';
import { current } from '../state.ts';

/** Another flight that the reader put behind the one that is shown; null = none. */
export const otherFlight = signal<Overlay | null>(null);

/** What stands behind the curves of the flight that is shown: its plan, then another flight. */
export const overlays = computed<readonly Overlay[]>(() => {
  const open = current.value;
  if (open === null) return [];
  const other = otherFlight.value;
  return [...planOverlay(open.analysis), ...(other === null ? [] : [other])];
});
