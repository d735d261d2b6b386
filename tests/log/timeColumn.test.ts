import { describe, expect, test } from 'vitest';
import type { Assigned } from '../../src/log/assign.ts';
import { ColumnBuilder } from '../../src/log/rawTable.ts';
import { readTimeColumn } from '../../src/log/timeColumn.ts';
import { findUnit } from '../../src/units/units.ts';

function column(cells: readonly string[], unit: string | null = null): Assigned {
  const builder = new ColumnBuilder({ decimal: '.', group: '' });
  cells.forEach((cell, row) => {
    builder.putText(row, cell);
  });
  return {
    channel: 'time',
    columnIndex: 0,
    column: builder.finish('time', null, cells.length),
    unit: unit === null ? null : findUnit('time', unit),
    unitFrom: unit === null ? null : 'header',
    confidence: 1,
    why: '',
  };
}

const secondsOf = (cells: readonly string[], unit: string | null = null): number[] => [
  ...readTimeColumn(column(cells, unit)).seconds,
];

describe('readTimeColumn', () => {
  test('numbers with a unit', () => {
    expect(secondsOf(['0', '500', '1000'], 'ms')).toEqual([0, 0.5, 1]);
  });

  test('numbers without a unit wait for evidence', () => {
    const read = readTimeColumn(column(['0', '1', '2']));
    expect([read.unit, [...read.seconds]]).toEqual([null, [0, 1, 2]]);
  });

  test('clock readings among plain seconds', () => {
    expect(secondsOf(['58', '59.5', '1:00', '1:01.5', '1:02', ''])).toEqual([
      58,
      59.5,
      60,
      61.5,
      62,
      Number.NaN,
    ]);
  });

  test('dates count from the first row, which is named', () => {
    const read = readTimeColumn(column(['2031-05-04T23:59:59Z', '2031-05-05T00:00:00.5Z']));
    expect([...read.seconds]).toEqual([0, 1.5]);
    expect(read.notes[0]?.text).toContain('2031-05-04T23:59:59.000Z');
  });

  test.each([
    ['s', 1],
    ['ms', 1e3],
    ['µs', 1e6],
    ['ns', 1e9],
  ])('UNIX times in %s', (unit, scale) => {
    const read = readTimeColumn(column([0, 0.5, 1].map((t) => String((1_935_788_280 + t) * scale))));
    expect(read.unit?.spelling).toBe(unit);
    // A double holds 2e18 ns to 256 ns.
    [...read.seconds].forEach((t, i) => {
      expect(t).toBeCloseTo(i / 2, 6);
    });
  });

  test('a countdown without its sign', () => {
    expect(secondsOf(['3', '2', '1', '0', '1', '2'], 's')).toEqual([-3, -2, -1, 0, 1, 2]);
  });
});
