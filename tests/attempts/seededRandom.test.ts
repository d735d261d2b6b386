import { expect, test } from 'vitest';
import { seededRandom } from '../../src/attempts/seededRandom.ts';

test('the same seed gives the same numbers, spread evenly from 0 to 1', () => {
  const [a, b] = [seededRandom(5), seededRandom(5)];
  const drawn = Array.from({ length: 1000 }, a);
  expect(drawn).toEqual(Array.from({ length: 1000 }, b));
  expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...drawn)).toBeLessThan(1);
  // σ of the mean of 1000 is 0.009.
  expect(Math.abs(drawn.reduce((s, x) => s + x) / 1000 - 0.5)).toBeLessThan(0.036);
});
