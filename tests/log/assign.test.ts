import { describe, expect, test } from 'vitest';
import { assignColumns } from '../../src/log/assign.ts';
import { delimitedTable } from '../../src/log/delimitedTable.ts';
import { eventTexts } from '../../src/log/eventTexts.ts';

const rows = Array.from({ length: 12 }, (_, i) => `${i},${10 * i},${11 * i},${i},${i === 3 ? 'go' : ''}`);
const table = delimitedTable(`time_s,altitude_m,baro altitude (ft),Speed,event\n${rows.join('\n')}\n`, 'x');
const assigned = (...args: readonly [string, string, string | null][]) =>
  assignColumns(
    table,
    args.map(([channel, column, unit]) => ({ channel: channel as 'altitude', column, unit })),
    'x',
  );

describe('assignColumns', () => {
  test('each channel gets its best column, none gets two', () => {
    expect(assigned().map((a) => [a.channel, a.columnIndex, a.unit?.spelling ?? null])).toEqual([
      ['time', 0, 's'],
      ['altitude', 1, 'm'],
      ['speed', 3, null],
      ['event', 4, null],
    ]);
  });

  test.each([
    ['as written', 'baro altitude (ft)'],
    ['without regard to case and blanks', 'BARO  Altitude (FT)'],
    ['by number', '#3'],
  ])('a choice of column %s', (_, column) => {
    const altitude = assigned(['altitude', column, null]).find((a) => a.channel === 'altitude');
    expect([altitude?.columnIndex, altitude?.unit?.spelling, altitude?.confidence]).toEqual([2, 'ft', 1]);
  });

  test('a unit that is told overrules the header', () => {
    const altitude = assigned(['altitude', 'altitude_m', 'km']).find((a) => a.channel === 'altitude');
    expect([altitude?.unit?.spelling, altitude?.unitFrom]).toEqual(['km', 'told']);
  });

  test.each([
    [['hight', 'altitude_m', null], 'map-unknown-channel'],
    [['altitude', 'altitide_m', null], 'map-unknown-column'],
    [['altitude', '#9', null], 'map-unknown-column'],
    [['altitude', 'altitude_m', 'kmm'], 'map-unknown-unit'],
  ] as const)('%j gives %s with a suggestion where one is near', (choice, code) => {
    expect(() => assigned([choice[0], choice[1], choice[2]])).toThrow(expect.objectContaining({ code }));
  });
});

test('events are told where the text changes', () => {
  const order = Int32Array.from({ length: 12 }, (_, i) => i);
  expect(eventTexts(assigned(), order, Float64Array.from(order))).toEqual([{ time_s: 3, text: 'go' }]);
});
