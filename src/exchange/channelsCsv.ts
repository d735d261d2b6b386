import type { ReviewEvent, StripName, Strips } from '../review/types.ts';
import { csvCell } from './csvCell.ts';
import { eventRows } from './eventRows.ts';

/**
 * The sampled channels as RFC 4180 CSV: one row for each row of the log, time in s from lift-off first, units in
 * the header, a last column with the events at the row nearest to their time. Missing values are empty cells;
 * numbers are written with as many digits as bring the same double back.
 */
export function channelsCsv(strips: Strips, events: readonly ReviewEvent[]): string {
  const names = Object.keys(strips.channels) as StripName[];
  const columns = names.map((name) => strips.channels[name]?.values);
  const happenings = eventRows(strips.time_s, events);
  const lines = [['time_s', ...names, 'event'].map(csvCell).join(',')];
  for (let row = 0; row < strips.time_s.length; row++) {
    const cells = [cell(strips.time_s[row]), ...columns.map((c) => cell(c?.[row]))];
    cells.push(csvCell(happenings.get(row) ?? ''));
    lines.push(cells.join(','));
  }
  return `${lines.join('\r\n')}\r\n`;
}

function cell(value: number | undefined): string {
  return value === undefined || !Number.isFinite(value) ? '' : String(value);
}
