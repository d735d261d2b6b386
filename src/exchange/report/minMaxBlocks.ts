import { indexAt } from '../sampleAt.ts';

/** Rows of a block. */
const size = 64;

/** Blocks to a pixel from which its edges may be those of blocks: they are then off by less than an eighth. */
const fine = 8;

/** Lowest and highest value of every block of rows, so that a pixel of many rows is read without reading them all. */
export interface MinMaxBlocks {
  readonly values: ArrayLike<number>;
  /** NaN where a block holds no number. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** Rows at which they stand. */
  readonly lowAt: Uint32Array;
  readonly highAt: Uint32Array;
}

export function minMaxBlocks(values: ArrayLike<number>): MinMaxBlocks {
  const count = Math.ceil(values.length / size);
  const low = new Float64Array(count);
  const high = new Float64Array(count);
  const lowAt = new Uint32Array(count);
  const highAt = new Uint32Array(count);
  for (let b = 0; b < count; b++) {
    let lowest = Number.POSITIVE_INFINITY;
    let highest = Number.NEGATIVE_INFINITY;
    const end = Math.min(values.length, (b + 1) * size);
    for (let i = b * size; i < end; i++) {
      const v = values[i]!;
      if (v < lowest) {
        lowest = v;
        lowAt[b] = i;
      }
      if (v > highest) {
        highest = v;
        highAt[b] = i;
      }
    }
    low[b] = highest >= lowest ? lowest : Number.NaN;
    high[b] = highest >= lowest ? highest : Number.NaN;
  }
  return { values, low, high, lowAt, highAt };
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
  let from = first + 1;
  for (const bound of columnBounds(time_s, start_s, end_s, columns)) {
    if (from >= last) break;
    let to = Math.min(last, bound);
    if (to - from > fine * size && to < last) to -= to % size;
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

const boundsMade = new WeakMap<object, { readonly key: string; readonly bounds: Uint32Array }>();

/** For each column the first row that is past it. Charts over one time axis ask for the same ones in turn. */
function columnBounds(
  time_s: ArrayLike<number>,
  start_s: number,
  end_s: number,
  columns: number,
): Uint32Array {
  const key = `${start_s} ${end_s} ${columns}`;
  const known = boundsMade.get(time_s);
  if (known?.key === key) return known.bounds;
  const bounds = new Uint32Array(columns);
  for (let c = 1; c <= columns; c++) {
    bounds[c - 1] = indexAt(time_s, start_s + (c * (end_s - start_s)) / columns) + 1;
  }
  boundsMade.set(time_s, { key, bounds });
  return bounds;
}

/** Lowest and highest value of the rows from `from` up to `to`, in the order in which they came. */
function extremes(line: MinMaxBlocks, from: number, to: number): [number | null, number | null] {
  const { values, low, high, lowAt, highAt } = line;
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
    for (let b = firstWhole; b < lastWhole; b++) {
      if (low[b]! < lowest) {
        lowest = low[b]!;
        lowestAt = lowAt[b]!;
      }
      if (high[b]! > highest) {
        highest = high[b]!;
        highestAt = highAt[b]!;
      }
    }
    look(lastWhole * size, to);
  }
  if (lowestAt < 0 || highestAt < 0) return [null, null];
  return lowestAt <= highestAt ? [lowest, highest] : [highest, lowest];
}

/** Lowest and highest value of all rows; null where none is known. */
export function rangeOf({ low, high }: MinMaxBlocks): readonly [number, number] | null {
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let b = 0; b < low.length; b++) {
    if (low[b]! < lowest) lowest = low[b]!;
    if (high[b]! > highest) highest = high[b]!;
  }
  return highest >= lowest ? [lowest, highest] : null;
}
