import { quantileSorted } from 'simple-statistics';

/** The finite values of a channel, rising. */
export function sortedFinite(values: Float64Array | readonly number[]): Float64Array {
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

/** Largest magnitude among finite values; 0 of nothing. */
export function largestMagnitude(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const x = Math.abs(values[i]!);
    if (x > most && x < Number.POSITIVE_INFINITY) most = x;
  }
  return most;
}
