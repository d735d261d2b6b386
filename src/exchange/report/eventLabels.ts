import type { EventName, ReviewEvent } from '../../review/types.ts';
import { labelRows, type PlacedLabel } from './labelRows.ts';

/** Which events keep their label where there is not room for all, first the most telling. */
const order: readonly EventName[] = [
  'cutoff',
  'max-q',
  'separation',
  'booster-separation',
  'ignition',
  'touchdown',
  'parachute-open',
  'jettison',
  'apoapsis',
  'lift-off',
  'mach-1',
  'pitch-over',
  'throttle-down',
  'throttle-up',
  'air-exit',
  'air-entry',
  'periapsis',
  'parachute-full',
];

/** The event's name as people write it. */
export function eventWord(name: EventName): string {
  return name === 'max-q' || name === 'mach-1' ? name.replace('-', ' ') : name;
}

/**
 * Events inside the chart with their labels on so many rows, none over another and none outside.
 * @param x time in s to px
 * @param letter width of a letter, px
 */
export function eventLabels(
  events: readonly ReviewEvent[],
  x: (time_s: number) => number,
  bounds: { readonly left: number; readonly right: number },
  letter: number,
  rows: number,
): readonly PlacedLabel<ReviewEvent>[] {
  const rank = (e: ReviewEvent) => {
    const place = order.indexOf(e.name);
    return place < 0 ? order.length : place;
  };
  const inside = events
    .filter((e) => x(e.time_s) >= bounds.left - 0.5 && x(e.time_s) <= bounds.right + 0.5)
    .toSorted((a, b) => rank(a) - rank(b) || a.time_s - b.time_s)
    .map((e) => ({ item: e, x: x(e.time_s), text: eventWord(e.name) }));
  return labelRows(inside, bounds, letter, rows);
}
