import { describe, expect, test } from 'vitest';
import { localMinimum } from '../../src/orbit/localMinimum.ts';

const from = (f: (x: Float64Array) => number, ...start: number[]) => {
  const x = Float64Array.from(start);
  const value = localMinimum(f, x, f(x));
  return { value, x: [...x] };
};

describe('localMinimum', () => {
  test('finds the foot of a skew bowl in one, two and three coordinates', () => {
    expect(from(([a]) => (a! - 0.3) ** 2, 0.9).x[0]).toBeCloseTo(0.3, 6);
    const two = from(([a, b]) => 3 * (a! - 0.6) ** 2 + (b! - 0.2) ** 2 + 2 * (a! - 0.6) * (b! - 0.2), 0, 1);
    expect(two.x[0]).toBeCloseTo(0.6, 6);
    expect(two.x[1]).toBeCloseTo(0.2, 6);
    const three = from(
      ([a, b, c]) => Math.exp((a! - 0.4) ** 2 + 4 * (b! - a!) ** 2) + (c! - 0.7 * b!) ** 2,
      0.9,
      0.1,
      0.5,
    );
    expect(three.value).toBeCloseTo(1, 11);
    expect(three.x[2]).toBeCloseTo(0.28, 5);
  });

  test('stays at a wall that the slope presses against, and slides along it', () => {
    const { x } = from(([a, b]) => (a! + 0.5) ** 2 + (b! - 0.3 - 0.1 * a!) ** 2, 0.8, 0.9);
    expect(x[0]).toBe(0);
    expect(x[1]).toBeCloseTo(0.3, 6);
  });

  test('leaves a wall where the slope leads away', () => {
    expect(from(([a]) => (a! - 0.5) ** 2, 0).x[0]).toBeCloseTo(0.5, 6);
    expect(from(([a]) => (a! - 0.5) ** 2, 1).x[0]).toBeCloseTo(0.5, 6);
  });

  test('comes down from where the curvature is negative, and never rises', () => {
    const f = ([a]: Float64Array) => Math.cos(6 * a!);
    const { value, x } = from(f, 0.05);
    expect(x[0]).toBeCloseTo(Math.PI / 6, 6);
    expect(value).toBeLessThanOrEqual(f(Float64Array.of(0.05)));
  });

  test('a flat floor and infinite values do no harm', () => {
    expect(from(() => 2, 0.4, 0.4)).toEqual({ value: 2, x: [0.4, 0.4] });
    const { value } = from(([a]) => (a! > 0.5 ? Number.POSITIVE_INFINITY : (a! - 0.6) ** 2), 0.2);
    expect(value).toBeLessThanOrEqual(0.16);
    expect(Number.isFinite(value)).toBe(true);
  });
});
