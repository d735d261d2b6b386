import { quantileSorted } from 'simple-statistics';
import { courseOf } from './course.ts';

/** Whether a column rises at every row, with a number in each: most clocks do, and then little is left to ask. */
function isRising(values: Float64Array): boolean {
  if (!(values[0]! > Number.NEGATIVE_INFINITY)) return false;
  for (let i = 1; i < values.length; i++) if (!(values[i]! > values[i - 1]!)) return false;
  return values[values.length - 1]! < Number.POSITIVE_INFINITY;
}

/** The finite values of a channel, rising; to be looked at only, for it may be the channel itself. */
export function sortedFinite(values: Float64Array | readonly number[]): Float64Array {
  if (values instanceof Float64Array && isRising(values)) return values;
  const finite = new Float64Array(values.length);
  let count = 0;
  let rising = true;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (!Number.isFinite(x)) continue;
    if (count > 0 && x < finite[count - 1]!) rising = false;
    finite[count++] = x;
  }
  const found = finite.subarray(0, count);
  return rising ? found : found.sort();
}

/** Quantile p of the finite values, as simple-statistics defines it; NaN of nothing. */
export function quantile(values: Float64Array | readonly number[], p: number): number {
  const sorted = sortedFinite(values);
  return sorted.length === 0 ? Number.NaN : quantileSorted(sorted as unknown as number[], p);
}

export function median(values: Float64Array | readonly number[]): number {
  return quantile(values, 0.5);
}

const counted = new WeakMap<Float64Array, number>();

/** How many values are finite: counted once, for a column is asked often and never changed. */
export function finiteCount(values: Float64Array): number {
  if (courseOf(values).whole) return values.length;
  const known = counted.get(values);
  if (known !== undefined) return known;
  let count = 0;
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]!)) count++;
  counted.set(values, count);
  return count;
}

/** Largest magnitude among finite values; 0 of nothing. */
export function largestMagnitude(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const x = Math.abs(values[i]!);
    if (x > most && x < Number.POSITIVE_INFINITY) most = x;
  }
  return most;
}
