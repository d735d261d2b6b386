import { counted } from '../units/figures.ts';
import { courseOf } from './course.ts';
import { areAllRows, everyRow } from './everyRow.ts';
import { finiteIndex } from './outliers.ts';
import { median, sortedFinite } from './statistics.ts';
import type { QualityNote } from './types.ts';
import { wildTimes } from './wildTimes.ts';

/** One flight's rows in the order of time. */
export interface TimeAxis {
  /** 0-based rows of the table, one per instant. */
  readonly rows: Int32Array;
  /** Whether these are all rows of the table, in the order of the file. */
  readonly whole: boolean;
  /** Strictly increasing, in the unit given. */
  readonly time: Float64Array;
  readonly notes: readonly QualityNote[];
}

/** Fewer rows than this are no flight of their own. */
const LEAST_ROWS = 10;

/**
 * Parts of a table in which time runs on: a clock that falls back to about where it began starts another
 * flight, one that falls back by a wrap of its counter goes on. Small steps back are rows out of order.
 * `continues(a, b)` tells whether the motion goes on from table row a to row b.
 */
export function splitParts(
  time: Float64Array,
  continues: (a: number, b: number) => boolean,
): { parts: Int32Array[]; time: Float64Array; notes: QualityNote[] } {
  if (courseOf(time).rises) return { parts: [everyRow(time.length)], time, notes: [] };
  const unwrapped = Float64Array.from(time);
  const notes: QualityNote[] = [];
  let rows: Int32Array = finiteIndex(time);
  if (runsBackwards(time, rows)) {
    rows = Int32Array.from(rows).reverse();
    notes.push({
      code: 'time-reversed',
      channel: 'time',
      rows: null,
      count: rows.length,
      text: 'The file begins with its latest row; the rows are turned round.',
    });
  }
  const step = typicalStep(time, rows);
  const wild = wildTimes(gathered(time, rows), step);
  if (wild.length > 0) {
    const lines = wild.map((k) => rows[k]! + 1);
    notes.push({
      code: 'time-outliers',
      channel: 'time',
      rows: [Math.min(...lines.slice(0, 1000)), Math.max(...lines.slice(-1000))],
      count: wild.length,
      text: `Left out: ${counted(wild.length, 'row', 'rows')} with a time far from both neighbours’.`,
    });
    const out = new Set(wild);
    rows = rows.filter((_, k) => !out.has(k));
  }
  const cuts: number[] = [0];
  let shift = 0;
  let high = Number.NEGATIVE_INFINITY;
  let lapStart = rows.length > 0 ? time[rows[0]!]! : 0;
  for (let k = 0; k < rows.length; k++) {
    const i = rows[k]!;
    let t = time[i]! + shift;
    const back = high - t;
    const lap = high - shift - lapStart;
    if (
      back > Math.max(5 * step, 0.3 * lap) &&
      k >= LEAST_ROWS / 2 &&
      staysBack(time, rows, k, high - shift)
    ) {
      const lift = wrapOf(back, step);
      if (tellsApart(t + lift, step) && continues(rows[k - 1]!, i)) {
        shift += lift;
        t += lift;
        lapStart = time[i]!;
        notes.push(wrapNote(i, lift));
      } else {
        cuts.push(k);
        high = Number.NEGATIVE_INFINITY;
        shift = 0;
        t = time[i]!;
        lapStart = t;
      }
    }
    unwrapped[i] = t;
    if (t > high) high = t;
  }
  const ends = [...cuts.slice(1), rows.length];
  const parts = cuts.map((from, p) => rows.slice(from, ends[p])).filter((part) => part.length >= LEAST_ROWS);
  // Times without any order make no part: the rows are then one flight, to be put in order.
  return { parts: parts.length > 0 ? parts : [rows], time: unwrapped, notes };
}

/** Whether nearly every row is earlier than the one before it. */
function runsBackwards(time: Float64Array, rows: Int32Array): boolean {
  let back = 0;
  for (let k = 1; k < rows.length; k++) if (time[rows[k]!]! < time[rows[k - 1]!]!) back++;
  return rows.length > LEAST_ROWS && back > 0.9 * (rows.length - 1);
}

function typicalStep(time: Float64Array, rows: Int32Array): number {
  const steps: number[] = [];
  const hop = Math.max(1, Math.floor(rows.length / 10_000));
  for (let k = 1; k < rows.length; k += hop) {
    const d = time[rows[k]!]! - time[rows[k - 1]!]!;
    if (d > 0) steps.push(d);
  }
  return steps.length === 0 ? 0 : median(steps);
}

/** A single row with a wrong time is no new beginning: the next rows must stay back as well. */
function staysBack(time: Float64Array, rows: Int32Array, k: number, high: number): boolean {
  const next = gathered(time, rows.subarray(k, k + LEAST_ROWS));
  return next.length > 1 && next.filter((t) => t < high).length > 0.7 * next.length;
}

/** Where counters and clocks begin again: powers of two of milli- and microseconds, minutes, hours, days. */
const wraps = [8, 10, 12, 16, 20, 24, 31, 32]
  .flatMap((bits) => [2 ** bits, 2 ** bits * 1e-3, 2 ** bits * 1e-6])
  .concat([60, 3600, 43200, 86400, 60e3, 3600e3, 86400e3, 1000]);

/** The lift that undoes a fall back: a known period that leaves about one usual step, else exactly one step. */
function wrapOf(back: number, step: number): number {
  const known = wraps
    .filter((period) => period - back > 0.2 * step && period - back < 3 * step)
    .sort((a, b) => Math.abs(a - back - step) - Math.abs(b - back - step))[0];
  return known ?? back + step;
}

/** Whether times about `t` keep their steps apart, as raised to it and in another unit too. */
function tellsApart(t: number, step: number): boolean {
  return step > 16 * Number.EPSILON * Math.abs(t);
}

function wrapNote(row: number, by: number): QualityNote {
  return {
    code: 'clock-wrapped',
    channel: 'time',
    rows: [row + 1, row + 1],
    count: 1,
    text: `The clock falls back by ${Number(by.toPrecision(6))} while the flight goes on; it is taken as a counter that began again, and the times after it are raised by as much.`,
  };
}

/** Puts rows in the order of time and leaves one per instant. */
export function orderRows(part: Int32Array, time: Float64Array): TimeAxis {
  if (part.length > 0 && risesAlong(part, time)) return axisOf(part, time, []);
  const notes: QualityNote[] = [];
  let order = part;
  const back = backSteps(part, time);
  if (back.length > 0) {
    order = Int32Array.from(part).sort((a, b) => time[a]! - time[b]! || a - b);
    notes.push({
      code: 'time-backsteps',
      channel: 'time',
      rows: [back[0]! + 1, back.at(-1)! + 1],
      count: back.length,
      text: `Put in the order of time: ${counted(back.length, 'row', 'rows')} later in the file than by the clock.`,
    });
  }
  const spread = spreadStamps(order, time, notes);
  if (spread !== null) return { ...axisOf(order, time, notes), time: spread };
  const kept = new Int32Array(order.length);
  let count = 0;
  const doubled: number[] = [];
  for (const row of order) {
    if (count > 0 && time[kept[count - 1]!] === time[row]) doubled.push(row);
    else kept[count++] = row;
  }
  if (doubled.length > 0) {
    notes.push({
      code: 'time-duplicates',
      channel: 'time',
      rows: [Math.min(...doubled.slice(0, 1000)) + 1, doubled.at(-1)! + 1],
      count: doubled.length,
      text: `Left out: ${counted(doubled.length, 'row', 'rows')} with the time of the row before; the first of each is kept.`,
    });
  }
  return axisOf(kept.subarray(0, count), time, notes);
}

function axisOf(rows: Int32Array, time: Float64Array, notes: readonly QualityNote[]): TimeAxis {
  const whole = areAllRows(rows, time.length);
  return { rows, whole, time: whole ? time : gathered(time, rows), notes };
}

/** Whether time runs on at each of some rows. */
export function risesAlong(rows: Int32Array, time: Float64Array): boolean {
  if (areAllRows(rows, time.length) && courseOf(time).rises) return true;
  for (let k = 1; k < rows.length; k++) if (!(time[rows[k]!]! > time[rows[k - 1]!]!)) return false;
  return true;
}

/** Values at some rows. */
export function gathered(values: Float64Array, rows: Int32Array): Float64Array {
  const out = new Float64Array(rows.length);
  for (let k = 0; k < rows.length; k++) out[k] = values[rows[k]!]!;
  return out;
}

function backSteps(part: Int32Array, time: Float64Array): number[] {
  const found: number[] = [];
  let high = Number.NEGATIVE_INFINITY;
  for (const row of part) {
    if (time[row]! < high) found.push(row);
    else high = time[row]!;
  }
  return found;
}

/**
 * Where stamps are coarser than the rows come (whole seconds at 10 Hz), most rows share a stamp: they are
 * spread evenly from their stamp to the next.
 */
function spreadStamps(order: Int32Array, time: Float64Array, notes: QualityNote[]): Float64Array | null {
  let repeats = 0;
  for (let k = 1; k < order.length; k++) if (time[order[k]!] === time[order[k - 1]!]) repeats++;
  if (repeats < 0.4 * order.length || order.length - repeats < 3) return null;
  const out = gathered(time, order);
  const gaps: number[] = [];
  for (let k = 1; k < out.length; k++) if (out[k]! > out[k - 1]!) gaps.push(out[k]! - out[k - 1]!);
  const usual = median(gaps);
  const runs: number[] = [];
  const runRows: number[] = [];
  for (let from = 0; from < out.length; ) {
    let to = from + 1;
    while (to < out.length && out[to] === out[from]) to++;
    runs.push(to - from);
    runRows.push(from);
    from = to;
  }
  const full = Math.max(1, sortedFinite(runs)[runs.length >> 1] ?? 1);
  runs.forEach((count, r) => {
    const from = runRows[r]!;
    const next = runRows[r + 1];
    const room = next === undefined ? usual : Math.min(usual, out[next]! - out[from]!);
    // The first and the last stamp may be begun or cut: their rows keep the usual spacing.
    const spacing = Math.min(room / count, r === 0 || next === undefined ? usual / full : room / count);
    const begin = r === 0 && count < full ? out[from]! + room - spacing * count : out[from]!;
    for (let k = 0; k < count; k++) out[from + k] = begin + k * spacing;
  });
  for (let k = 1; k < out.length; k++) if (!(out[k]! > out[k - 1]!)) return null;
  notes.push({
    code: 'time-coarse',
    channel: 'time',
    rows: null,
    count: repeats,
    text: `The clock is written in steps of ${Number(usual.toPrecision(4))} while about ${full} rows share each; they are spread evenly over the step, so times are sure to about one row.`,
  });
  return out;
}
