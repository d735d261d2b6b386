import { expect, test } from 'vitest';
import { kendallTail } from '../../src/attempts/kendallTail.ts';

test('agrees with the printed table of Kendall’s S (Hollander & Wolfe 1999, table A.30; from memory)', () => {
  expect(kendallTail(4, 4)).toBeCloseTo(0.167, 3);
  expect(kendallTail(7, 13)).toBeCloseTo(0.035, 3);
  expect(kendallTail(8, 16)).toBeCloseTo(0.031, 3);
  expect(kendallTail(10, 21)).toBeCloseTo(0.036, 3);
});

test('is symmetric and ends at none and all', () => {
  for (const n of [3, 6, 11]) {
    const pairs = (n * (n - 1)) / 2;
    expect(kendallTail(n, pairs + 2)).toBe(0);
    expect(kendallTail(n, -pairs)).toBe(1);
    expect(kendallTail(n, 2 - (pairs % 2))).toBeCloseTo(1 - kendallTail(n, (pairs % 2) - 0), 12);
  }
});
