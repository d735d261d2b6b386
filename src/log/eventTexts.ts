import type { Assigned } from './assign.ts';
import type { Log } from './types.ts';

/** Texts of the event column where they change, with their times. */
export function eventTexts(
  assigned: readonly Assigned[],
  rows: Int32Array,
  time: Float64Array,
): Log['eventTexts'] {
  const column = assigned.find((a) => a.channel === 'event')?.column;
  if (column === undefined) return [];
  const found: { time_s: number; text: string }[] = [];
  let before = '';
  rows.forEach((row, i) => {
    const text = column.texts.get(row) ?? '';
    if (text !== '' && text !== before) found.push({ time_s: time[i] ?? Number.NaN, text });
    before = text;
  });
  return found;
}
