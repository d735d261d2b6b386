/** Index of the last time that is not after `time_s`; −1 before the first. Times rise. */
export function indexAt(times_s: ArrayLike<number>, time_s: number): number {
  let low = 0;
  let high = times_s.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((times_s[middle] ?? Number.POSITIVE_INFINITY) <= time_s) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Value at a time, linear between rows; null outside the rows or beside a missing value. */
export function valueAt(
  times_s: ArrayLike<number>,
  values: ArrayLike<number | null>,
  time_s: number,
): number | null {
  const i = indexAt(times_s, time_s);
  const t0 = times_s[i];
  const v0 = values[i];
  if (t0 === undefined || v0 === undefined || v0 === null || Number.isNaN(v0)) return null;
  const t1 = times_s[i + 1];
  const v1 = values[i + 1];
  if (t0 === time_s) return v0;
  if (t1 === undefined || v1 === undefined || v1 === null || Number.isNaN(v1)) return null;
  return v0 + ((v1 - v0) * (time_s - t0)) / (t1 - t0);
}
