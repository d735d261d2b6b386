import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks, timeTicks } from '../../../src/exchange/report/ticks.ts';

test('ticks are round, inside the range and about as many as asked', () => {
  expect(ticks(-400, 1200, 5)).toEqual([0, 500, 1000]);
  expect(ticks(0, 200, 4)).toEqual([0, 50, 100, 150, 200]);
  expect(timeTicks(0, 540, 9)).toEqual([0, 60, 120, 180, 240, 300, 360, 420, 480, 540]);
});

test('never outside, never more than one above the count, for any range', () => {
  const anyRange = fc.tuple(
    fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    fc.integer({ min: 1, max: 12 }),
  );
  fc.assert(
    fc.property(anyRange, ([low, length, count]) => {
      for (const list of [ticks(low, low + length, count), timeTicks(low, low + length, count)]) {
        expect(list.length).toBeLessThanOrEqual(count + 1);
        for (const t of list) {
          expect(t).toBeGreaterThanOrEqual(low - 1e-6 * length);
          expect(t).toBeLessThanOrEqual(low + length * (1 + 1e-6));
        }
      }
    }),
  );
});

test('an empty or endless range has none', () => {
  expect(ticks(3, 3, 5)).toEqual([]);
  expect(ticks(0, Number.POSITIVE_INFINITY, 5)).toEqual([]);
  expect(timeTicks(5, 1, 5)).toEqual([]);
});
