import { computed, signal } from '@preact/signals';
import type { Overlay } from '../../exchange/report/overlay.ts';
import { planOverlay } from '../../exchange/report/planOverlay.ts';
import type { Analysis, StripName } from '../../review/types.ts';
import { current } from '../state.ts';

/** Other flights that are drawn behind the one that is shown, beside its plan. */
export const otherFlights = signal<readonly Overlay[]>([]);

/** A flight's curves as they are drawn behind another's. */
export function overlayOf(name: string, { review, strips }: Analysis): Overlay {
  const { time_s, margin } = review.budget.curves;
  return {
    name,
    time_s: strips.time_s,
    channels: channelsOf(strips),
    margin: margin.some((v) => v !== null) ? { time_s, values: margin } : null,
  };
}

function channelsOf(strips: Analysis['strips']): Overlay['channels'] {
  const entries = Object.entries(strips.channels) as [StripName, { values: Float64Array }][];
  return Object.fromEntries(entries.map(([name, { values }]) => [name, values]));
}

/** What stands behind the curves of the flight that is shown: its plan first, then other flights. */
export const overlays = computed<readonly Overlay[]>(() => {
  const open = current.value;
  if (open === null) return [];
  return [...planOverlay(open.analysis), ...otherFlights.value];
});
