import { blockOf, courseOf, lastOfBlock } from './course.ts';
import { FAR, finiteIndex } from './outliers.ts';

/** A stretch of rows that hold one value although the vehicle went on. */
export interface HeldRun {
  /** `frozen`: the last true value again and again; `dropout`: a value that stands for nothing. */
  readonly kind: 'frozen' | 'dropout';
  /** First and last row to be left out. */
  readonly from: number;
  readonly to: number;
}

const SHORTEST_RUN = 6;

/** Written in place of a value by many programs; only these are believed where a log begins or ends with them. */
const sentinels = new Set([
  -1e30,
  1e30,
  -1e20,
  1e20,
  ...[999, 9999, 99999, 999999, 9999999].flatMap((x) => [x, -x]),
]);

/**
 * Runs of one value between other values that it cannot belong to. A frozen run begins where the channel was and
 * ends with a jump to where it meanwhile is; a dropout jumps away, holds and jumps back. A channel rounded
 * to `step` may hold for long and then move by one step: that is neither.
 */
export function heldRuns(
  time: Float64Array,
  values: Float64Array,
  step: number,
  written: (value: number) => number = (value) => value,
): HeldRun[] {
  const course = courseOf(values);
  if (course.whole ? course.longestHold < SHORTEST_RUN : !anyRun(values)) return [];
  const index = finiteIndex(values);
  const found: HeldRun[] = [];
  for (let from = 0; from < index.length; ) {
    if (course.whole && !course.holdsIn(blockOf(from + 1))) {
      from = lastOfBlock(from + 1);
      continue;
    }
    let to = from + 1;
    while (to < index.length && values[index[to]!] === values[index[from]!]) to++;
    const length = to - from;
    const run =
      length >= SHORTEST_RUN && length < 0.5 * index.length
        ? judge(time, values, index, from, to - 1, step, written)
        : null;
    if (run !== null) found.push(run);
    from = to;
  }
  return found;
}

/** Whether any value is held for as long as counts. */
function anyRun(values: Float64Array): boolean {
  let before = Number.NaN;
  let length = 1;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (x === before) {
      if (++length >= SHORTEST_RUN) return true;
    } else if (Number.isFinite(x)) {
      before = x;
      length = 1;
    }
  }
  return false;
}

function judge(
  time: Float64Array,
  values: Float64Array,
  index: Int32Array,
  first: number,
  last: number,
  step: number,
  written: (value: number) => number,
): HeldRun | null {
  const held = values[index[first]!]!;
  const from = index[first]!;
  const to = index[last]!;
  if (first === 0 || last === index.length - 1) {
    return sentinels.has(Number(written(held).toPrecision(9))) ? { kind: 'dropout', from, to } : null;
  }
  const before = index[first - 1]!;
  const after = index[last + 1]!;
  const inRate = rateAcross(time, values, index, first - 12, first - 1);
  const outRate = rateAcross(time, values, index, last + 1, last + 12);
  const rate = Math.max(inRate, outRate);
  const inJump = Math.abs(held - values[before]!);
  const outJump = Math.abs(values[after]! - held);
  const inUsual = inRate * (time[from]! - time[before]!) + 2 * step;
  const outUsual = outRate * (time[after]! - time[to]!) + 2 * step;
  if (inJump > FAR * inUsual && outJump > FAR * outUsual) {
    // Away and back: what lies between the neighbours is nearer to them than the held value is.
    const across = Math.abs(values[after]! - values[before]!);
    const around = 4 * largestChange(values, index, first, last);
    return across < 0.8 * Math.max(inJump, outJump) && inJump > around && outJump > around
      ? { kind: 'dropout', from, to }
      : null;
  }
  // It was moving on both sides, and at the end makes up for what it missed.
  const moved = rate * (time[after]! - time[from]!);
  const steady =
    rateAcross(time, values, index, first - 6, first) > 0 &&
    outJump > 4 * outUsual &&
    outJump > 0.3 * moved &&
    outJump < 3 * moved &&
    !holds(values, index, last + 1);
  return steady && inJump <= 3 * inUsual ? { kind: 'frozen', from: index[first + 1]!, to } : null;
}

/** Largest change near a run, its own two jumps left out: a channel that always holds and jumps is no dropout. */
function largestChange(values: Float64Array, index: Int32Array, first: number, last: number): number {
  const reach = Math.max(40, 2 * (last - first));
  let most = 0;
  const look = (from: number, to: number): void => {
    for (let k = Math.max(1, from); k < Math.min(to, index.length); k++) {
      most = Math.max(most, Math.abs(values[index[k]!]! - values[index[k - 1]!]!));
    }
  };
  look(first - reach, first);
  look(last + 2, last + reach);
  return most;
}

/** Whether a channel holds at k as well: then it is a staircase, and this is its next step. */
function holds(values: Float64Array, index: Int32Array, k: number): boolean {
  return values[index[k]!] === values[index[Math.min(k + 1, index.length - 1)]!];
}

/** Mean magnitude of the rate over some finite samples. */
function rateAcross(
  time: Float64Array,
  values: Float64Array,
  index: Int32Array,
  a: number,
  b: number,
): number {
  const first = index[Math.max(0, a)]!;
  const last = index[Math.min(index.length - 1, b)]!;
  const dt = time[last]! - time[first]!;
  return dt > 0 ? Math.abs(values[last]! - values[first]!) / dt : 0;
}
