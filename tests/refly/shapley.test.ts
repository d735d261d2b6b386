import { expect, test } from 'vitest';
import { shapley } from '../../src/refly/shapley.ts';

test('the glove game (Shapley 1953; from memory): one left and two right gloves', () => {
  // A pair is worth 1; player 0 has the left glove.
  const parts = shapley(3, (set) => (set & 1 && set & 6 ? 1 : 0));
  expect(parts[0]).toBeCloseTo(2 / 3, 12);
  expect(parts[1]).toBeCloseTo(1 / 6, 12);
  expect(parts[2]).toBeCloseTo(1 / 6, 12);
});

test('adds up to the whole difference, whatever the function', () => {
  const value = (set: number) => Math.sin(3 * set) * 100 + set ** 2;
  const parts = shapley(4, value);
  expect(parts.reduce((a, b) => a + b, 0)).toBeCloseTo(value(15) - value(0), 9);
  expect(shapley(0, value)).toEqual([]);
});

test('gives each its own where they do not interact, and nothing to one without effect', () => {
  const parts = shapley(3, (set) => (set & 1 ? 5 : 0) + (set & 4 ? -2 : 0));
  expect(parts).toEqual([5, 0, -2].map((x) => expect.closeTo(x, 12)));
});
