import type { Assigned } from './assign.ts';
import { readClock } from './clock.ts';
import type { RawColumn, RawTable } from './rawTable.ts';
import type { ChannelName } from './types.ts';

/** How sure a column can be that no header names. */
const GUESSED = 0.35;

/**
 * Time, altitude and speed of a table without names, from behaviour alone: the time rises at every row at an even
 * pace; of all pairs of the others altitude and speed are the one in which, on the way up, the altitude gained
 * is an even share of the speed summed over time.
 */
export function guessColumns(table: RawTable, taken: readonly Assigned[]): Assigned[] {
  const free = table.columns
    .map((column, columnIndex) => ({ column, columnIndex }))
    .filter(
      ({ column, columnIndex }) => !taken.some((a) => a.columnIndex === columnIndex) && isNumeric(column),
    );
  const has = (channel: ChannelName): boolean => taken.some((a) => a.channel === channel);
  const guessed: Assigned[] = [];
  const take = (
    channel: ChannelName,
    found: { column: RawColumn; columnIndex: number },
    why: string,
  ): void => {
    guessed.push({
      channel,
      ...found,
      unit: null,
      unitFrom: null,
      confidence: GUESSED,
      why: `no header names it; ${why}`,
    });
  };
  let time = taken.find((a) => a.channel === 'time')?.column;
  if (time === undefined) {
    const clock = table.columns
      .map((column, columnIndex) => ({ column, columnIndex }))
      .find(({ column }) => isClock(column, table.rows));
    const best =
      clock ??
      free
        .map((one) => ({ one, unevenness: unevenness(one.column.numbers) }))
        .filter(({ unevenness: u }) => u !== null)
        .sort((a, b) => (a.unevenness ?? 0) - (b.unevenness ?? 0))[0]?.one;
    if (best === undefined) return [];
    time = best === clock ? inSeconds(best.column) : best.column;
    take('time', best, best === clock ? 'its cells are clock readings' : 'it rises at every row');
  }
  const rest = free.filter(
    ({ column, columnIndex }) =>
      !guessed.some((a) => a.columnIndex === columnIndex) && column !== time && !isConstant(column),
  );
  if (has('altitude') || has('speed')) return guessed;
  let least: { h: (typeof rest)[0]; v: (typeof rest)[0]; spread: number } | null = null;
  for (const h of rest) {
    for (const v of rest) {
      if (h === v) continue;
      const spread = climbSpread(time.numbers, h.column.numbers, v.column.numbers);
      if (spread < 0.4 && (least === null || spread < least.spread)) least = { h, v, spread };
    }
  }
  if (least !== null) {
    take('altitude', least.h, 'on the way up it grows with the speed summed over time');
    take('speed', least.v, 'summed over time it grows with the altitude');
  }
  return guessed;
}

function inSeconds(column: RawColumn): RawColumn {
  const numbers = Float64Array.from(column.numbers);
  for (const [row, text] of column.texts) numbers[row] = readClock(text)?.seconds ?? Number.NaN;
  return { ...column, numbers };
}

function isClock(column: RawColumn, rows: number): boolean {
  if (column.texts.size < 0.8 * rows) return false;
  const some = [...column.texts.values()].slice(0, 50);
  return some.every((text) => readClock(text) !== null);
}

function isNumeric(column: RawColumn): boolean {
  let finite = 0;
  for (const x of column.numbers) if (Number.isFinite(x)) finite++;
  return finite > 0.8 * column.numbers.length;
}

function isConstant(column: RawColumn): boolean {
  const first = column.numbers.find((x) => Number.isFinite(x));
  return column.numbers.every((x) => !Number.isFinite(x) || x === first);
}

/** Relative spread of the steps of a rising column; null where it does not rise at nearly every row. */
function unevenness(values: Float64Array): number | null {
  let rising = 0;
  let count = 0;
  let sum = 0;
  let squares = 0;
  for (let i = 1; i < values.length; i++) {
    const step = values[i]! - values[i - 1]!;
    if (!Number.isFinite(step)) continue;
    count++;
    if (step <= 0) continue;
    rising++;
    sum += step;
    squares += step * step;
  }
  if (count < 5 || rising < 0.95 * count) return null;
  const mean = sum / rising;
  return Math.sqrt(Math.max(0, squares / rising - mean * mean)) / mean;
}

/** Relative spread of (altitude gained)/(speed × time) over six stretches of the first half of the climb. */
function climbSpread(times: Float64Array, heights: Float64Array, speeds: Float64Array): number {
  const rows: number[] = [];
  for (let i = 0; i < times.length; i++) {
    if (Number.isFinite(times[i]! + heights[i]! + speeds[i]!)) rows.push(i);
  }
  const [t, h, v] = [times, heights, speeds].map((values) => Float64Array.from(rows, (i) => values[i]!)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  let top = 0;
  for (let i = 0; i < h.length; i++) if (h[i]! > h[top]!) top = i;
  let end = 0;
  while (end < top && h[end]! - h[0]! < 0.5 * (h[top]! - h[0]!)) end++;
  if (end < 6) return Number.POSITIVE_INFINITY;
  const ratios: number[] = [];
  const width = Math.max(1, Math.floor(end / 6));
  for (let k = 0; k + width <= end; k += width) {
    let flown = 0;
    for (let i = k + 1; i <= k + width; i++) flown += ((t[i]! - t[i - 1]!) * (v[i]! + v[i - 1]!)) / 2;
    ratios.push((h[k + width]! - h[k]!) / flown);
  }
  if (ratios.some((r) => !(r > 0))) return Number.POSITIVE_INFINITY;
  const mean = ratios.reduce((a, b) => a + b, 0) / ratios.length;
  return Math.sqrt(ratios.reduce((a, r) => a + (r - mean) ** 2, 0) / ratios.length) / mean;
}
