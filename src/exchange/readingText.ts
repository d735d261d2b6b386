import type { Review } from '../review/types.ts';
import { numberText } from './figureText.ts';

/** A reading off a curve: whole numbers, one decimal below 10. */
export function readingText(value: number): string {
  return numberText(value, Math.abs(value) < 9.95 && value !== 0 ? 1 : 0);
}

/** Seconds from lift-off: `123 s`. */
export function timeText(time_s: number): string {
  return `${numberText(time_s, 0)} s`;
}

/** A stretch of time: `168 s to 639 s`, and only `448 s` where both ends read the same. */
export function spanText(start_s: number, end_s: number): string {
  const [start, end] = [timeText(start_s), timeText(end_s)];
  return start === end ? start : `${start} to ${end}`;
}

/** What time zero is: lift-off, or the first row of a log that begins in flight. */
export function timeOrigin({ events }: Pick<Review, 'events'>): string {
  return events.some((e) => e.name === 'lift-off') ? 'lift-off' : 'the log’s first row';
}

/** Until when the ascent's books run: its cutoff, or the end of a log that ends under thrust. */
export function untilText({ orbit, ledger }: Pick<Review, 'orbit' | 'ledger'>): string {
  return `to ${orbit.cutoff_s === null ? 'the end' : 'cutoff'} at ${timeText(ledger.end_s)}`;
}

/** A round value under an axis: decimals only where the step needs them. */
export function tickText(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return numberText(
    rounded,
    Number.isInteger(rounded) ? 0 : Math.min(3, String(rounded).split('.')[1]?.length ?? 1),
  );
}
