import { expect, test } from 'vitest';
import { theilSen } from '../../src/attempts/theilSen.ts';

const x = [1, 2, 3, 4, 5, 6, 7, 8];
const y = [3, 1, 4, 1.5, 9, 2.6, 5, 3.5];

test('shifts and scales with the data', () => {
  const line = theilSen(x, y)!;
  const moved = theilSen(
    x,
    y.map((v) => 10 - 3 * v),
  )!;
  expect(moved.slope).toBeCloseTo(-3 * line.slope, 12);
  expect(moved.low).toBeCloseTo(-3 * line.high!, 12);
  expect(moved.high).toBeCloseTo(-3 * line.low!, 12);
});

test('points on a line give the line whatever the confidence', () => {
  const line = theilSen(
    x,
    x.map((v) => 2 * v - 5),
  )!;
  expect([line.slope, line.intercept, line.low, line.high]).toEqual([2, -5, 2, 2]);
});

test('four points carry no 95 % interval, five do', () => {
  expect(theilSen([1, 2, 3, 4], [1, 4, 2, 8])).toMatchObject({ low: null, high: null });
  // 2/5! of the orders lie outside all slopes.
  expect(theilSen([1, 2, 3, 4, 5], [1, 4, 2, 8, 7])!.confidence).toBeCloseTo(1 - 2 / 120, 12);
});

test('ties are taken in, the same x leaves no pair', () => {
  const tied = theilSen([1, 1, 2, 2, 3, 3, 4, 4, 5, 5], [1, 2, 2, 3, 3, 4, 4, 5, 5, 6])!;
  expect(tied.slope).toBeGreaterThan(0.9);
  expect(tied.low!).toBeLessThanOrEqual(tied.slope);
  expect(tied.high!).toBeGreaterThanOrEqual(tied.slope);
  expect(theilSen([2, 2, 2], [1, 2, 3])).toBeNull();
  expect(theilSen([], [])).toBeNull();
});

test('of very many points as many as can be paired are taken, at even places', () => {
  const x = Array.from({ length: 20_000 }, (_, i) => i);
  const line = theilSen(
    x,
    x.map((at) => 3 + 0.25 * at + (at % 7)),
  )!;
  expect(line.points).toBe(2000);
  expect(line.slope).toBeCloseTo(0.25, 3);
  expect(line.low!).toBeLessThanOrEqual(line.slope);
  expect(line.high!).toBeGreaterThanOrEqual(line.slope);
});
