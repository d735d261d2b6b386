import { expect, test } from 'vitest';
import { openingValue } from '../../src/log/opening.ts';
import { largestMagnitude, median, quantile, sortedFinite } from '../../src/log/statistics.ts';

test('what is missing or infinite does not count', () => {
  const values = Float64Array.of(3, Number.NaN, 1, Number.POSITIVE_INFINITY, -2);
  expect(Array.from(sortedFinite(values))).toEqual([-2, 1, 3]);
  expect(median(values)).toBe(1);
  expect(largestMagnitude(values)).toBe(3);
});

test('nothing has no quantile', () => {
  expect(quantile([], 0.5)).toBeNaN();
  expect(largestMagnitude(new Float64Array(0))).toBe(0);
});

test('the opening is the first second, five rows at most', () => {
  const values = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8);
  expect(openingValue(Float64Array.of(0, 10, 20, 30, 40, 50, 60, 70), values)).toBe(1);
  expect(openingValue(Float64Array.of(0, 0.5, 1, 2, 3, 4, 5, 6), values)).toBe(2);
  expect(openingValue(Float64Array.of(0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7), values)).toBe(3);
});
