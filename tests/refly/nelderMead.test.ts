import { expect, test } from 'vitest';
import { nelderMead } from '../../src/refly/nelderMead.ts';

test('finds the minimum of Rosenbrock’s valley (1960)', () => {
  const valley = ([x = 0, y = 0]: readonly number[]) => 100 * (y - x * x) ** 2 + (1 - x) ** 2;
  const { x, value } = nelderMead(valley, [-1.2, 1], [0.5, 0.5], 1e-14, 500);
  expect(x).toEqual([1, 1].map((v) => expect.closeTo(v, 5)));
  expect(value).toBeLessThan(1e-10);
});

test('keeps to its evaluations and passes over what is not a number', () => {
  let calls = 0;
  const value = ([x = 0]: readonly number[]) => {
    calls++;
    return x < 0 ? Number.NaN : (x - 2) ** 2;
  };
  const found = nelderMead(value, [5], [1], 0, 40);
  expect(found.x[0]).toBeCloseTo(2, 3);
  expect(calls).toBe(found.evaluations);
  expect(calls).toBeLessThan(44);
});
