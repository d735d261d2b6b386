import { expect, test } from 'vitest';
import { type PlanSheet, row } from '../../../src/app/planEditor/planSheet.ts';
import {
  withCell,
  withCells,
  withoutRow,
  withRowBelow,
  withRowMoved,
} from '../../../src/app/planEditor/rowEdits.ts';

const [a, b] = [row({ at: 10, pitch: 90 }), row({ at: 25, pitch: 80 })];
const sheet: PlanSheet = { name: 'x', axis: 'time', rows: [a, b] };

test('a cell is changed, the others stay', () => {
  expect(withCell(sheet, b.id, 'pitch', 70).rows).toEqual([a, { ...b, pitch: 70 }]);
});

test('a row put in between stands halfway, so that it changes nothing yet', () => {
  const put = withRowBelow(sheet, a.id);
  expect(put.sheet.rows.map((r) => r.at)).toEqual([10, 17.5, 25]);
  expect(put.sheet.rows[1]).toMatchObject({ id: put.id, pitch: null, throttle: null });
});

test('a row put in at the end is empty', () => {
  expect(withRowBelow(sheet, b.id).sheet.rows.map((r) => r.at)).toEqual([10, 25, null]);
  expect(withRowBelow(sheet, -1).sheet.rows.map((r) => r.at)).toEqual([10, 25, null]);
});

test('a row moves and stays itself; at the end it stands', () => {
  expect(withRowMoved(sheet, a.id, 1).rows).toEqual([b, a]);
  expect(withRowMoved(sheet, a.id, -1)).toBe(sheet);
});

test('the last row taken out leaves an empty one', () => {
  const one = withoutRow(sheet, a.id);
  expect(one.rows).toEqual([b]);
  expect(withoutRow(one, b.id).rows).toMatchObject([{ at: null, pitch: null, event: null }]);
});

test('cells are laid over from a cell on; rows are added, what is too far right is dropped', () => {
  const next = withCells(sheet, b.id, 'throttle', [
    [80, 'pitch-over', 'too far'],
    [90, null],
  ]);
  expect(next.rows).toMatchObject([
    a,
    { ...b, throttle: 80, event: 'pitch-over' },
    { at: null, throttle: 90, event: null },
  ]);
});
