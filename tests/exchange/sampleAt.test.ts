import { expect, test } from 'vitest';
import { indexAt, valueAt } from '../../src/exchange/sampleAt.ts';

const times = [0, 1, 3, 7];

test('the row at a time is the last that is not after it', () => {
  expect([-0.1, 0, 0.9, 1, 6.9, 7, 99].map((t) => indexAt(times, t))).toEqual([-1, 0, 0, 1, 2, 3, 3]);
});

test('a value between rows is linear, and there is none outside or beside a gap', () => {
  const values = [0, 10, 30, null];
  expect(valueAt(times, values, 2)).toBe(20);
  expect(valueAt(times, values, 3)).toBe(30);
  expect(valueAt(times, values, 5)).toBeNull();
  expect(valueAt(times, values, -1)).toBeNull();
  expect(valueAt(times, values, 8)).toBeNull();
  expect(valueAt(times, Float64Array.of(0, Number.NaN, 5, 6), 0.5)).toBeNull();
});
