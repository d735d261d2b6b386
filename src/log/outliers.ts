import { BLOCK, blockOf, courseOf, lastOfBlock } from './course.ts';
import { everyRow } from './everyRow.ts';

/** Longest run of wild values that is taken for an error of the log. */
const LONGEST_RUN = 5;

/** A value is wild when it is this many times farther from its neighbour than is usual around it. */
export const FAR = 12;

/** Indices of finite values; to be looked at only. */
export function finiteIndex(values: Float64Array): Int32Array {
  if (courseOf(values).whole) return everyRow(values.length);
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
  const steady = steadyBlocks(time, values);
  if (steady === null) return [];
  const index = finiteIndex(values);
  const whole = index.length === values.length;
  const found: number[] = [];
  for (let k = 1; k < index.length - 1; k++) {
    if (steady[blockOf(index[k]!)] === 1) {
      if (whole) k = lastOfBlock(k);
      continue;
    }
    const before = values[index[k - 1]!]!;
    const jump = values[index[k]!]! - before;
    if (Math.abs(jump) <= FAR * ROUNDING * Math.abs(before) || !comesBack(values, index, k)) continue;
    if (isUsual(time, values, index, k)) continue;
    const rate = usualRate(time, values, index, k);
    const usual = (to: number): number =>
      rate * (time[index[to]!]! - time[index[k - 1]!]!) + ROUNDING * Math.abs(before);
    if (Math.abs(jump) <= FAR * usual(k)) continue;
    const length = runLength(values, index, k, usual);
    if (length === 0) continue;
    for (let j = 0; j < length; j++) found.push(index[k + j]!);
    k += length - 1;
  }
  return found;
}

/**
 * Whether any of the next values lies nearer to the one before k than all between lie to either: else no run begins
 * at k, however little neighbours usually differ.
 */
function comesBack(values: Float64Array, index: Int32Array, k: number): boolean {
  const before = values[index[k - 1]!]!;
  const side = Math.sign(values[index[k]!]! - before);
  let nearest = values[index[k]!]!;
  for (let length = 1; length <= LONGEST_RUN && k + length < index.length; length++) {
    const after = values[index[k + length]!]!;
    const apart = Math.abs(after - before);
    if (side * (nearest - before) >= apart && side * (nearest - after) >= apart) return true;
    if (side * (after - nearest) < 0) nearest = after;
  }
  return false;
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

/** Share of a value by which any neighbour may differ. */
const ROUNDING = 1e-7;

/**
 * Blocks of rows of which none can be wild, marked 1: values that never turn do not come back, and where most change at
 * near the fastest rate of all, none stands out. Null where all are such. This is what makes a long log quick to look
 * through.
 */
function steadyBlocks(time: Float64Array, values: Float64Array): Uint8Array | null {
  const steady = new Uint8Array(Math.max(0, blockOf(values.length - 1) + 1));
  const course = courseOf(values);
  let all = true;
  for (let block = 0; block < steady.length; block++) {
    if ((course.whole && course.goesOneWay(block)) || changesAlike(time, values, block)) steady[block] = 1;
    else all = false;
  }
  return all ? null : steady;
}

/** Changes of a block that make any of them usual by the measure of `isUsual`: each is a neighbour of each other. */
const ENOUGH_ALIKE = (1 - USUAL_QUANTILE) * (ROWS_BEFORE + ROWS_BEHIND) + 3;

/** Whether more rows of a block change at near the fastest rate of all than `isUsual` asks for. */
function changesAlike(time: Float64Array, values: Float64Array, block: number): boolean {
  // The last block looks back over rows of the one before it.
  const first = Math.min(1 + block * BLOCK, values.length - BLOCK);
  let largest = 0;
  let least = Number.POSITIVE_INFINITY;
  let shortest = Number.POSITIVE_INFINITY;
  let longest = 0;
  for (let i = first; i < first + BLOCK; i++) {
    const change = Math.abs(values[i]! - values[i - 1]!);
    const step = time[i]! - time[i - 1]!;
    // A missing value makes the change, and by it the largest, no number.
    largest = change > largest ? change : change >= 0 ? largest : Number.NaN;
    if (change < least) least = change;
    if (step < shortest) shortest = step;
    if (step > longest) longest = step;
  }
  // A change over this is at a rate near enough to the fastest of all, whatever its step; a little more than FAR asks
  // for, so that no rounding of the two ways to ask can tell them apart.
  const limit = (largest * longest) / (shortest * 0.99 * FAR);
  let near = least > limit ? BLOCK : 0;
  if (near === 0)
    for (let i = first; i < first + BLOCK; i++) if (Math.abs(values[i]! - values[i - 1]!) > limit) near++;
  const measurable = limit > 1e-280 && limit < 1e280;
  return largest === 0 || (measurable && near > ENOUGH_ALIKE);
}

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
  const from = Math.max(1, k - ROWS_BEFORE);
  const rates = new Float64Array(Math.max(0, Math.min(index.length, k + ROWS_BEHIND) - from));
  for (let j = 0; j < rates.length; j++) {
    const [a, b] = [index[from + j - 1]!, index[from + j]!];
    rates[j] = Math.abs(values[b]! - values[a]!) / (time[b]! - time[a]!);
  }
  rates.sort();
  return rates[Math.floor(USUAL_QUANTILE * (rates.length - 1))] ?? 0;
}
