import { indexAt } from '../sampleAt.ts';

/** Rows of a block. */
const size = 64;

/** Lowest and highest value of every block of rows, so that a pixel of many rows is read without reading them all. */
export interface MinMaxBlocks {
  readonly values: ArrayLike<number>;
  /** NaN where a block holds no number. */
  readonly low: Float64Array;
  readonly high: Float64Array;
}

export function minMaxBlocks(values: ArrayLike<number>): MinMaxBlocks {
  const count = Math.ceil(values.length / size);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    const end = Math.min(values.length, (b + 1) * size);
    for (let i = b * size; i < end; i++) {
      const v = values[i]!;
      if (v < lowest) lowest = v;
      if (v > highest) highest = v;
    }
    low[b] = highest >= lowest ? lowest : Number.NaN;
    high[b] = highest >= lowest ? highest : Number.NaN;
  }
  return { values, low, high };
}

const made = new WeakMap<object, MinMaxBlocks>();

/** The blocks of a list of values that never changes, made once. */
export function blocksOf(values: ArrayLike<number>): MinMaxBlocks {
  const known = made.get(values);
  if (known !== undefined) return known;
  const blocks = minMaxBlocks(values);
  made.set(values, blocks);
  return blocks;
}

/** Rows of a picture: one time axis, every line on it; null = nothing known there. */
export interface PictureRows {
  readonly time_s: number[];
  readonly lines: (number | null)[][];
}

/**
 * Thins lines on one rising time axis to what `columns` pixels can show between two times. A pixel of one or two
 * rows keeps them; a pixel of more becomes two rows with the lowest and the highest value of each line, in the
 * order in which they came. One row on each side of the stretch is kept, so that lines run out of the picture.
 */
export function pictureRows(
  time_s: ArrayLike<number>,
  lines: readonly MinMaxBlocks[],
  start_s: number,
  end_s: number,
  columns: number,
): PictureRows {
  const out: PictureRows = { time_s: [], lines: lines.map(() => []) };
  const n = time_s.length;
  const first = Math.max(0, indexAt(time_s, start_s));
  const last = Math.min(n - 1, indexAt(time_s, end_s) + 1);
  const keep = (i: number) => {
    out.time_s.push(time_s[i]!);
    lines.forEach(({ values }, k) => {
      const v = values[i]!;
      out.lines[k]!.push(Number.isNaN(v) ? null : v);
    });
  };
  if (last - first < 2 * columns) {
    for (let i = first; i <= last; i++) keep(i);
    return out;
  }
  keep(first);
  const perColumn_s = (end_s - start_s) / columns;
  let from = first + 1;
  for (let c = 1; c <= columns && from < last; c++) {
    const to = Math.min(last, indexAt(time_s, start_s + c * perColumn_s) + 1);
    if (to - from <= 2) {
      for (let i = from; i < to; i++) keep(i);
    } else {
      out.time_s.push(time_s[from]!, time_s[to - 1]!);
      lines.forEach((line, k) => {
        out.lines[k]!.push(...extremes(line, from, to));
      });
    }
    from = Math.max(from, to);
  }
  for (let i = from; i <= last; i++) keep(i);
  return out;
}

/** Lowest and highest value of the rows from `from` up to `to`, in the order in which they came. */
function extremes(line: MinMaxBlocks, from: number, to: number): [number | null, number | null] {
  const { values, low, high } = line;
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  let lowestAt = -1;
  let highestAt = -1;
  const look = (a: number, b: number) => {
    for (let i = a; i < b; i++) {
      const v = values[i]!;
      if (v < lowest) {
        lowest = v;
        lowestAt = i;
      }
      if (v > highest) {
        highest = v;
        highestAt = i;
      }
    }
  };
  const firstWhole = Math.ceil(from / size);
  const lastWhole = Math.floor(to / size);
  if (firstWhole >= lastWhole) look(from, to);
  else {
    look(from, firstWhole * size);
    look(lastWhole * size, to);
    // Of the whole blocks only the two that hold an extreme are read row by row.
    let lowBlock = -1;
    let highBlock = -1;
    for (let b = firstWhole; b < lastWhole; b++) {
      if (low[b]! < (lowBlock < 0 ? lowest : low[lowBlock]!)) lowBlock = b;
      if (high[b]! > (highBlock < 0 ? highest : high[highBlock]!)) highBlock = b;
    }
    if (lowBlock >= 0) look(lowBlock * size, (lowBlock + 1) * size);
    if (highBlock >= 0) look(highBlock * size, (highBlock + 1) * size);
  }
  if (lowestAt < 0 || highestAt < 0) return [null, null];
  return lowestAt <= highestAt ? [lowest, highest] : [highest, lowest];
}
