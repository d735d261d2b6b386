import { median } from './statistics.ts';

/** How long the opening of a log lasts, s, and how many rows it has at most. */
const OPENING_S = 1;
const OPENING_ROWS = 5;

/** A channel's value at the log's beginning: the median over its first second, five rows at most. */
export function openingValue(time: Float64Array, values: Float64Array): number {
  let rows = 1;
  while (rows < OPENING_ROWS && rows < time.length && time[rows]! - time[0]! <= OPENING_S) rows++;
  return median(values.subarray(0, rows));
}
