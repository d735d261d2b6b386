import { courseOf } from '../log/course.ts';
import type { ChannelName, Log, QualityNote } from '../log/types.ts';

/**
 * A log far denser than a flight moves is averaged over short blocks of rows before anything is derived: white
 * noise falls as it would in the smoothers that come after, a curve is bent by a twenty-fourth of its second
 * derivative times the block's length squared (3 mm of altitude at 40 m/s² over 40 ms), and everything after it
 * costs a fraction. No block reaches over a jump of any channel.
 */

/** A log of fewer rows is left alone: averaging it would save little. */
const MANY_ROWS = 40_000;
/** No log is averaged to fewer rows than this, so that a short flight keeps its detail. */
const ENOUGH_ROWS = 10_000;
/** Longest block: a log at 25 Hz is ample for an ascent. */
const WIDEST_S = 0.04;
/** Rows over which a channel's usual change is taken. */
const STRETCH = 64;
/** A change is a jump from so many times the usual one of its stretch on: Gaussian noise stays below 7. */
const JUMP = 8;
/** Rows on each side of a jump that stay as they are; edges are sought between them. */
const KEPT_BESIDE = 2;

/** Channels whose rounding to a step hides nothing: any lone change of theirs is one of the vehicle's. */
const SWITCHED: ReadonlySet<ChannelName> = new Set(['throttle', 'thrust', 'stage']);

export interface Averaged {
  readonly log: Log;
  /** What was done, for people; null where the log was left as it is. */
  readonly note: QualityNote | null;
}

/** The log itself, or where it is far denser than its flight needs the log of its blocks' means. */
export function blockMeans(log: Log): Averaged {
  const { time } = log;
  const n = time.length;
  const span_s = n < 2 ? 0 : time[n - 1]! - time[0]!;
  const width = Math.floor(Math.min(n / ENOUGH_ROWS, (WIDEST_S * (n - 1)) / span_s));
  if (n < MANY_ROWS || !(width >= 2)) return { log, note: null };
  const alone = rowsBesideJumps(log);
  const starts = blockStarts(alone, width);
  const channels: Partial<Record<ChannelName, Float64Array>> = {};
  for (const [name, y] of Object.entries(log.channels)) channels[name as ChannelName] = means(y, starts);
  const blocks = starts.length - 1;
  const rate_Hz = Math.round((n - 1) / span_s);
  return {
    log: { ...log, time: means(time, starts), channels },
    note: {
      code: 'rows-averaged',
      channel: null,
      rows: null,
      count: n,
      text: `The log’s ${n} rows (${rate_Hz} a second) were averaged over up to ${width} neighbours each, to ${blocks}; no mean reaches over a jump of a channel. Figures and strips rest on the means.`,
    },
  };
}

/** 1 at each row that stays alone: the log's ends, and both sides of each jump. */
function rowsBesideJumps(log: Log): Uint8Array {
  const n = log.time.length;
  const alone = new Uint8Array(n);
  const keep = (jump: number): void => {
    alone.fill(1, Math.max(0, jump - KEPT_BESIDE), Math.min(n, jump + KEPT_BESIDE));
  };
  keep(0);
  keep(n);
  findJumps(log.time, 0, keep);
  for (const [name, y] of Object.entries(log.channels)) {
    const step = SWITCHED.has(name as ChannelName) ? 0 : (log.resolution[name as ChannelName] ?? 0);
    findJumps(y, 1.5 * step, keep);
  }
  return alone;
}

/** Calls `found` with each row that a jump of more than `least`, or the start or end of a gap, leads to. */
function findJumps(y: Float64Array, least: number, found: (row: number) => void): void {
  const { whole, largestRise, deepestFall } = courseOf(y);
  if (whole && largestRise <= least && -deepestFall <= least) return;
  for (let from = 1; from < y.length; from += STRETCH) {
    const to = Math.min(from + STRETCH, y.length);
    let sum = 0;
    let most = 0;
    let before = y[from - 1]!;
    for (let i = from; i < to; i++) {
      const next = y[i]!;
      const change = Math.abs(next - before);
      sum += change;
      if (change > most) most = change;
      before = next;
    }
    const usual = sum / (to - from);
    // Of nothing but missing values every change is NaN, as it is of a stretch that holds some.
    if (Number.isNaN(usual)) gapsAndJumps(y, from, to, least, found);
    else if (most > JUMP * usual && most > least) {
      const threshold = Math.max(least, JUMP * usual);
      for (let i = from; i < to; i++) if (Math.abs(y[i]! - y[i - 1]!) > threshold) found(i);
    }
  }
}

/** A stretch with missing values. */
function gapsAndJumps(
  y: Float64Array,
  from: number,
  to: number,
  least: number,
  found: (row: number) => void,
): void {
  let sum = 0;
  let count = 0;
  for (let i = from; i < to; i++) {
    const change = Math.abs(y[i]! - y[i - 1]!);
    if (Number.isNaN(change)) continue;
    sum += change;
    count++;
  }
  const threshold = Math.max(least, count === 0 ? 0 : (JUMP * sum) / count);
  for (let i = from; i < to; i++) {
    const parted = Number.isNaN(y[i]!) !== Number.isNaN(y[i - 1]!);
    if (parted || Math.abs(y[i]! - y[i - 1]!) > threshold) found(i);
  }
}

/** First row of each block, and the number of rows at the end. */
function blockStarts(alone: Uint8Array, width: number): Int32Array {
  const n = alone.length;
  const starts = new Int32Array(n + 1);
  let count = 0;
  let i = 0;
  while (i < n) {
    starts[count++] = i;
    if (alone[i] === 1) {
      i++;
      continue;
    }
    const end = Math.min(i + width, n);
    while (i < end && alone[i] === 0) i++;
  }
  starts[count] = n;
  return starts.slice(0, count + 1);
}

/** Mean of each block; of equal values it is exactly that value. */
function means(y: Float64Array, starts: Int32Array): Float64Array {
  const out = new Float64Array(starts.length - 1);
  for (let b = 0; b < out.length; b++) {
    const from = starts[b]!;
    const to = starts[b + 1]!;
    const first = y[from]!;
    let above = 0;
    for (let i = from + 1; i < to; i++) above += y[i]! - first;
    out[b] = first + above / (to - from);
  }
  return out;
}
