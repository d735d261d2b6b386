/** Longest run of wild values that is taken for an error of the log. */
const LONGEST_RUN = 5;

/** A value is wild when it is this many times farther from its neighbour than is usual around it. */
export const FAR = 12;

/** Indices of finite values. */
export function finiteIndex(values: Float64Array): Int32Array {
  const index = new Int32Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]!)) index[count++] = i;
  return index.subarray(0, count);
}

/**
 * Indices of runs of up to five values that lie away from both the value before and the value after them, on the
 * same side, by far more than neighbours differ anywhere near, while the two agree with each other.
 */
export function wildValues(time: Float64Array, values: Float64Array): number[] {
  const index = finiteIndex(values);
  const found: number[] = [];
  for (let k = 1; k < index.length - 1; k++) {
    const before = values[index[k - 1]!]!;
    const jump = values[index[k]!]! - before;
    if (jump === 0 || isUsual(time, values, index, k)) continue;
    const rate = usualRate(time, values, index, k);
    const usual = (to: number): number =>
      rate * (time[index[to]!]! - time[index[k - 1]!]!) + 1e-7 * Math.abs(before);
    if (Math.abs(jump) <= FAR * usual(k)) continue;
    const length = runLength(values, index, k, usual);
    if (length === 0) continue;
    for (let j = 0; j < length; j++) found.push(index[k + j]!);
    k += length - 1;
  }
  return found;
}

/** Length of the run that begins at k and comes back; 0 where it does not. */
function runLength(
  values: Float64Array,
  index: Int32Array,
  k: number,
  usual: (to: number) => number,
): number {
  const before = values[index[k - 1]!]!;
  const side = Math.sign(values[index[k]!]! - before);
  for (let length = 1; length <= LONGEST_RUN && k + length < index.length; length++) {
    const after = values[index[k + length]!]!;
    const allowed = usual(k + length);
    if (Math.abs(after - before) > 3 * allowed) continue;
    for (let j = 0; j < length; j++) {
      const value = values[index[k + j]!]!;
      if (side * (value - before) < 3 * allowed || side * (value - after) < 3 * allowed) return 0;
    }
    return length;
  }
  return 0;
}

/** Rows before and behind a sample from which is told what is usual. */
const ROWS_BEFORE = 20;
export const ROWS_BEHIND = 25;
const USUAL_QUANTILE = 0.8;

/** Whether enough neighbours change as much that the k-th cannot be wild; cheap, for it is asked at every row. */
function isUsual(time: Float64Array, values: Float64Array, index: Int32Array, k: number): boolean {
  const [a, b] = [index[k - 1]!, index[k]!];
  const limit = Math.abs(values[b]! - values[a]!) / (time[b]! - time[a]!) / FAR;
  const from = Math.max(1, k - ROWS_BEFORE);
  const to = Math.min(index.length, k + ROWS_BEHIND);
  const enough = (1 - USUAL_QUANTILE) * (to - from) + 2;
  let above = 0;
  for (let j = from; j < to; j++) {
    const [c, d] = [index[j - 1]!, index[j]!];
    if (Math.abs(values[d]! - values[c]!) > limit * (time[d]! - time[c]!) && ++above > enough) return true;
  }
  return false;
}

/** The 0.8 quantile of rates of change among the forty finite samples around the k-th. */
export function usualRate(time: Float64Array, values: Float64Array, index: Int32Array, k: number): number {
  const rates: number[] = [];
  for (let j = Math.max(1, k - ROWS_BEFORE); j < Math.min(index.length, k + ROWS_BEHIND); j++) {
    const [a, b] = [index[j - 1]!, index[j]!];
    rates.push(Math.abs(values[b]! - values[a]!) / (time[b]! - time[a]!));
  }
  rates.sort((a, b) => a - b);
  return rates[Math.floor(USUAL_QUANTILE * (rates.length - 1))] ?? 0;
}
