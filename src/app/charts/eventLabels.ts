import type { EventName, ReviewEvent } from '../../review/types.ts';

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

export interface EventLabel {
  readonly event: ReviewEvent;
  readonly x: number;
  /** Empty where the label found no room; the tick stays. */
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

/**
 * Labels under their ticks, none over another and none outside the chart.
 * @param x time in s to px
 * @param letter width of a letter, px
 */
export function eventLabels(
  events: readonly ReviewEvent[],
  x: (time_s: number) => number,
  left: number,
  right: number,
  letter: number,
): readonly EventLabel[] {
  const taken: [number, number][] = [];
  const rank = (e: ReviewEvent) => {
    const place = order.indexOf(e.name);
    return place < 0 ? order.length : place;
  };
  return events
    .filter((e) => x(e.time_s) >= left - 0.5 && x(e.time_s) <= right + 0.5)
    .toSorted((a, b) => rank(a) - rank(b) || a.time_s - b.time_s)
    .map((event) => {
      const at = x(event.time_s);
      const text = eventWord(event.name);
      const half = (text.length * letter) / 2;
      const anchor = at - half < left ? 'start' : at + half > right ? 'end' : 'middle';
      const from = anchor === 'start' ? at : anchor === 'end' ? at - 2 * half : at - half;
      const free = taken.every(([a, b]) => from + 2 * half + 8 < a || from > b + 8);
      if (free) taken.push([from, from + 2 * half]);
      return { event, x: at, text: free ? text : '', anchor };
    });
}
