import { describe, expect, test } from 'vitest';
import {
  blankSheet,
  columns,
  filledRows,
  type PlanSheet,
  row,
  sheetOf,
  sheetText,
} from '../../../src/app/planEditor/planSheet.ts';
import { readMission } from '../../../src/mission/readCard.ts';
import { readPlan } from '../../../src/plan/readPlan.ts';
import { writePlan } from '../../../src/plan/writePlan.ts';

const cells = (sheet: PlanSheet | null) => sheet?.rows.map((r) => columns.map((c) => r[c]));
const read = (text: string) => readPlan(text, 'x.plan.csv', readMission({}));

const written: PlanSheet = {
  name: 'x.plan.csv',
  axis: 'altitude',
  rows: [
    row({ at: 0, pitch: 90, throttle: 100 }),
    row(),
    row({ at: 1200, throttle: 87.5, event: 'throttle-down; pitch-over' }),
    row({ at: 9000, pitch: 62.25, throttle: 100, event: 'cutoff (first, "big" stage)' }),
  ],
};

test('a sheet is written and read back as it was, without its empty rows', () => {
  const back = sheetOf('x.plan.csv', sheetText(written), 100);
  expect(back).toMatchObject({ name: 'x.plan.csv', axis: 'altitude' });
  expect(cells(back)).toEqual(filledRows(written).map((r) => columns.map((c) => r[c])));
});

test('the engine reads of it what stands in the cells', async () => {
  const plan = await read(sheetText(written));
  expect(plan.axis).toBe('altitude');
  expect([...plan.axisValues]).toEqual([0, 1200, 9000]);
  expect(plan.throttle?.[1]).toBeCloseTo(0.875, 12);
  // Nothing stands at 1,200 m: on the line from 90° to 62.25°.
  expect(((plan.pitch_rad?.[1] ?? 0) * 180) / Math.PI).toBeCloseTo(90 - (27.75 * 1200) / 9000, 9);
  expect(plan.events.map((e) => e.name)).toEqual(['throttle-down', 'pitch-over', 'cutoff']);
});

test('what the engine writes is a sheet without asking it again', async () => {
  const plan = await read('time_s,pitch_deg,throttle,event\n0,90,1,\n55,60,0.29,throttle-down\n90,40,1,\n');
  expect(cells(sheetOf('x', writePlan(plan), 100))).toEqual([
    [0, 90, 100, null],
    [55, 60, 29, 'throttle-down'],
    [90, 40, 100, null],
  ]);
});

test('a column that is empty throughout is left out; nothing filled in is a head alone', () => {
  expect(sheetText({ ...written, rows: [row({ at: 3, pitch: 80 })] })).toBe(
    'altitude_m,pitch_deg\r\n3,80\r\n',
  );
  expect(sheetText(blankSheet('x'))).toBe('time_s\r\n');
});

test('what is no number stands as it was written', () => {
  const sheet = { ...written, rows: [row({ at: 'soon', pitch: 'a, b' }), row({ at: 10, pitch: 80 })] };
  expect(cells(sheetOf('x', sheetText(sheet), 100))).toEqual([
    ['soon', 'a, b', null, null],
    [10, 80, null, null],
  ]);
});

describe('any other text is for the engine', () => {
  test.each([
    ['other headers', 'Zeit;Nick\n0;90\n'],
    ['a column besides', 'time_s,pitch_deg,heading_deg\n0,90,90\n'],
    ['the same column twice', 'time_s,throttle,throttle_percent\n0,1,100\n'],
    ['more rows than can be edited', `time_s,pitch_deg\n${'1,90\n'.repeat(101)}`],
  ])('%s', (_, text) => {
    expect(sheetOf('x', text, 100)).toBeNull();
  });
});
