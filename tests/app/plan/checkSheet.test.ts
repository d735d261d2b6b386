import { expect, test } from 'vitest';
import { checkSheet } from '../../../src/app/plan/checkSheet.ts';
import { type Cell, row, sheetTable, sheetText } from '../../../src/app/planEditor/planSheet.ts';

/** Checks rows of time and pitch. */
function check(...rows: readonly (readonly [at: Cell, pitch: Cell, event?: Cell])[]) {
  const sheet = {
    name: 'x.plan.csv',
    axis: 'time' as const,
    rows: rows.map(([at, pitch, event = null]) => row({ at, pitch, event })),
  };
  return checkSheet({ plan: { name: sheet.name, text: sheetText(sheet) }, ...sheetTable(sheet) });
}

test('a check says what `lossbook check` says, with the controls as read', async () => {
  const said = await check([0, 0], [10, 5], [300, 88]);
  expect(said.faults).toEqual([]);
  expect(said.understood[0]).toBe('a table of controls against time');
  expect(said.missing.join(' ')).toContain('counts from the vertical');
  expect(said.curve?.pitch_deg?.map((x) => Math.round(x))).toEqual([90, 85, 2]);
  expect(said.curve?.throttle_percent).toBeNull();
});

test('every fault is told at its row and column, however little stands in the table', async () => {
  const { faults, curve } = await check([0, 'steep'], [null, 80], [-5, 70, 'cutof']);
  expect(faults.map((f) => [f.row, f.column])).toEqual([
    [1, 'pitch_deg'],
    [2, 'time_s'],
    [3, 'time_s'],
    [3, 'event'],
  ]);
  expect(faults[3]?.text).toMatch(/^There is no event “cutof”; did you mean “cutoff”\? Use one of: ignition/);
  expect(curve).toBeNull();
});

test.each([
  ['a single row', [[0, 90]], /fewer than two rows/],
  [
    'times alone',
    [
      [0, null],
      [10, null],
    ],
    /neither pitch nor throttle nor events/,
  ],
  ['a single event, of which no file can be made', [[5, null, 'cutoff']], /no table of numbers was found/i],
] as const)('%s is faulty as a whole', async (_, rows, text) => {
  const { faults } = await check(...rows);
  expect(faults).toMatchObject([{ row: null, text: expect.stringMatching(text) }]);
});
