import { computed, signal } from '@preact/signals';
import type { Overlay } from '../../exchange/report/overlay.ts';
import { planOverlay } from '../../exchange/report/planOverlay.ts';
import { current } from '../state.ts';

/** Another flight that the reader put behind the one that is shown; null = none. */
export const otherFlight = signal<Overlay | null>(null);

const none: readonly Overlay[] = [];

/** What stands behind the curves of the flight that is shown: its plan, then another flight. */
export const overlays = computed<readonly Overlay[]>(() => {
  const open = current.value;
  const other = otherFlight.value;
  const all = [...(open === null ? [] : planOverlay(open.analysis)), ...(other === null ? [] : [other])];
  // Nothing is always the same nothing: charts are drawn anew for what is another.
  return all.length === 0 ? none : all;
});
