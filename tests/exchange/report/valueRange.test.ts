import { expect, test } from 'vitest';
import { logTicks, valueRange } from '../../../src/exchange/report/valueRange.ts';

const rows = (values: (number | null)[], guest = false) => ({
  time_s: values.map((_, i) => i),
  lines: [{ values, guest }],
});
const all = { start_s: 0, end_s: 100 };

test('from zero where nothing is below it, with room above', () => {
  expect(valueRange(rows([2, 10]), all, true, false)).toEqual([0, 10.8]);
  expect(valueRange(rows([-10, 10]), all, true, false)).toEqual([-11.6, 11.6]);
});

test('only what is in view sets the scale, and no guest that would take much of it', () => {
  expect(valueRange(rows([0, 10, 500]), { start_s: 0, end_s: 1 }, true, false)).toEqual([0, 10.8]);
  const beside = (high: number) => ({
    time_s: [0, 1],
    lines: [
      { values: [0, 10], guest: false },
      { values: [-9000, high], guest: true },
    ],
  });
  expect(valueRange(beside(9000), all, true, false)).toEqual([0, 12]);
  expect(valueRange(beside(15), all, true, false)).toEqual([0, 15.8]);
  expect(valueRange(beside(16), all, true, false)).toEqual([0, 12]);
  expect(valueRange(beside(9), all, true, false)).toEqual([0, 12]);
});

test('a logarithmic scale begins at a power of ten, leaves out zero and spans five decades at most', () => {
  const [low, high] = valueRange(rows([0, 0.5, 800]), all, true, true);
  expect(low).toBeCloseTo(0.1, 12);
  expect(high).toBe(1280);
  expect(valueRange(rows([1e-9, 1000]), all, true, true)[0]).toBeCloseTo(0.01, 12);
});

test('without a number there is still a scale', () => {
  expect(valueRange(rows([null, null]), all, false, false)).toEqual([0, 1]);
  expect(valueRange(rows([null, -3]), all, false, true)).toEqual([0.1, 1]);
});

test('ticks of a logarithmic scale are powers of ten, thinned to the count', () => {
  expect(logTicks(0.1, 1280, 10)).toEqual([0.1, 1, 10, 100, 1000]);
  expect(logTicks(0.1, 1280, 3)).toEqual([0.1, 10, 1000]);
  expect(logTicks(100, 280, 3)).toEqual([100, 200]);
});
