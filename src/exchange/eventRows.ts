import type { ReviewEvent } from '../review/types.ts';

/**
 * What happened at which row: each event at the row nearest to its time, several joined by semicolons.
 * @param time_s of the rows, rising
 */
export function eventRows(time_s: Float64Array, events: readonly ReviewEvent[]): Map<number, string> {
  const rows = new Map<number, string>();
  for (const event of events) {
    const after = time_s.findIndex((t) => t >= event.time_s);
    const row = after < 0 ? time_s.length - 1 : after;
    const nearer = row > 0 && event.time_s - time_s[row - 1]! < time_s[row]! - event.time_s ? row - 1 : row;
    const text = event.subject === null ? event.name : `${event.name} (${event.subject})`;
    const before = rows.get(nearer);
    rows.set(nearer, before === undefined ? text : `${before}; ${text}`);
  }
  return rows;
}
