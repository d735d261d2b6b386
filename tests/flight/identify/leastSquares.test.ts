import { expect, test } from 'vitest';
import { leastSquares, reduce } from '../../../src/flight/identify/leastSquares.ts';

test('a column that repeats another is left out, with an infinite variance', () => {
  const s = leastSquares(2, Float64Array.of(1, 2, 2, 4, 3, 6), Float64Array.of(1, 2, 3));
  expect(s.x[0]).toBeCloseTo(1, 12);
  expect(s.x[1]).toBe(0);
  expect(s.inverseNormal[3]).toBe(Number.POSITIVE_INFINITY);
});

test('reducing keeps the distance of every point', () => {
  const a = Float64Array.of(1, 2, 3, -1, 0.5, 4, 2, 2);
  const b = Float64Array.of(1, -2, 0.5, 3);
  const { r, c, rest } = reduce(2, a, b);
  for (const [x, y] of [
    [0, 0],
    [1, -1],
    [0.3, 2],
  ] as const) {
    let direct = 0;
    for (let i = 0; i < 4; i++) direct += (a[2 * i]! * x + a[2 * i + 1]! * y - b[i]!) ** 2;
    const short = (r[0]! * x + r[1]! * y - c[0]!) ** 2 + (r[3]! * y - c[1]!) ** 2 + rest;
    expect(short).toBeCloseTo(direct, 10);
  }
});
