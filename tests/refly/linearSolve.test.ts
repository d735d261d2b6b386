import { expect, test } from 'vitest';
import { linearSolve } from '../../src/refly/linearSolve.ts';

test('solves the Hilbert system of order 5 whose solution is all ones', () => {
  const n = 5;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      matrix[i * n + j] = 1 / (i + j + 1);
      right[i] = right[i]! + 1 / (i + j + 1);
    }
  expect(linearSolve(matrix, right)).toBe(true);
  // Condition 5e5, so 11 digits are left; measured 6e-13.
  for (const v of right) expect(Math.abs(v - 1)).toBeLessThan(1e-11);
});

test('changes rows where the pivot is zero', () => {
  const right = Float64Array.of(3, 2);
  expect(linearSolve(Float64Array.of(0, 1, 1, 0), right)).toBe(true);
  expect([...right]).toEqual([2, 3]);
});

test('tells a singular matrix', () => {
  expect(linearSolve(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 2))).toBe(false);
});

test('no equations are solved', () => {
  expect(linearSolve(new Float64Array(0), new Float64Array(0))).toBe(true);
});
