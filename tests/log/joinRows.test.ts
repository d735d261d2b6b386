import { describe, expect, test } from 'vitest';
import type { Assigned } from '../../src/log/assign.ts';
import { joinRows } from '../../src/log/joinRows.ts';
import { ColumnBuilder } from '../../src/log/rawTable.ts';
import type { ChannelName } from '../../src/log/types.ts';

function column(channel: ChannelName, cells: readonly string[]): Assigned {
  const builder = new ColumnBuilder({ decimal: '.', group: '' });
  cells.forEach((cell, row) => {
    builder.putText(row, cell);
  });
  return {
    channel,
    columnIndex: 0,
    column: builder.finish(channel, null, cells.length),
    unit: null,
    unitFrom: null,
    confidence: 1,
    why: '',
  };
}

const rows = Int32Array.of(0, 1, 2, 3);
const time = Float64Array.of(0, 0, 1, 1);

describe('joinRows', () => {
  test('rows of one time that complement each other become one', () => {
    const joined = joinRows(rows, time, [
      column('altitude', ['5', '', '6', '']),
      column('speed', ['', '7', '', '8']),
      column('event', ['', 'go', '', '']),
    ]);
    expect([...joined.rows]).toEqual([0, 2]);
    expect([...(joined.assigned[1]?.column.numbers ?? [])].slice(0, 3)).toEqual([7, 7, 8]);
    expect(joined.assigned[2]?.column.texts.get(0)).toBe('go');
    expect(joined.notes).toMatchObject([{ code: 'rows-joined', count: 2, rows: [2, 4] }]);
  });

  test('rows that disagree, and rows without anything, stay apart', () => {
    const joined = joinRows(rows, time, [column('altitude', ['5', '5', '6', ''])]);
    expect([[...joined.rows], joined.notes]).toEqual([[0, 1, 2, 3], []]);
  });

  test('the columns it was given are left alone', () => {
    const speed = column('speed', ['', '7', '', '8']);
    joinRows(rows, time, [column('altitude', ['5', '', '6', '']), speed]);
    expect(speed.column.numbers[0]).toBeNaN();
  });
});
