import { quantileSorted } from 'simple-statistics';

/** The finite values of a channel, rising. */
export function sortedFinite(values: Iterable<number>): number[] {
  const finite: number[] = [];
  for (const x of values) if (Number.isFinite(x)) finite.push(x);
  return finite.sort((a, b) => a - b);
}

/** Quantile p of the finite values, as simple-statistics defines it; NaN of nothing. */
export function quantile(values: Iterable<number>, p: number): number {
  const sorted = sortedFinite(values);
  return sorted.length === 0 ? Number.NaN : quantileSorted(sorted, p);
}

export function median(values: Iterable<number>): number {
  return quantile(values, 0.5);
}

/** Largest magnitude among finite values; 0 of nothing. */
export function largestMagnitude(values: Float64Array): number {
  let most = 0;
  for (const x of values) if (Math.abs(x) > most && Number.isFinite(x)) most = Math.abs(x);
  return most;
}
