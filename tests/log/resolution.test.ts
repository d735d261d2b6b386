import { describe, expect, test } from 'vitest';
import { roundingStep } from '../../src/log/resolution.ts';

const climb = (n: number, rate: number): number[] =>
  Array.from({ length: n }, (_, i) => rate * i + 0.0003 * i * i);
const rounded = (values: readonly number[], step: number): Float64Array =>
  Float64Array.from(values, (x) => Math.round(x / step) * step);

describe('roundingStep', () => {
  test.each([100, 1, 1 / 3.6, 0.1])('a staircase of %d', (step) => {
    expect(roundingStep(rounded(climb(2000, 0.37 * step), step))).toBeCloseTo(step, 9);
  });

  test('a step of 1/3.6 written with three decimals', () => {
    const values = rounded(climb(3000, 0.1), 1 / 3.6).map((x) => Math.round(x * 1000) / 1000);
    expect(roundingStep(values)).toBeCloseTo(1 / 3.6, 3);
  });

  test('a few steps at every sample', () => {
    expect(roundingStep(rounded(climb(2000, 2.3), 1))).toBeCloseTo(1, 9);
  });

  test('a smooth channel has none, however few its decimals', () => {
    expect(roundingStep(Float64Array.from(climb(2000, 1), (x) => Number(x.toFixed(3))))).toBeNull();
  });

  test('a steady rate with a pause is no rounding', () => {
    const mass = Float64Array.from(
      { length: 400 },
      (_, i) => 5000 - 2.50625 * Math.min(i, 200) - 2.50625 * Math.max(0, i - 300),
    );
    expect(roundingStep(mass)).toBeNull();
  });

  test('noise is no rounding', () => {
    let seed = 1;
    const noise = Float64Array.from({ length: 2000 }, () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    });
    expect(roundingStep(noise)).toBeNull();
  });

  test('constants and nothing have none', () => {
    expect(roundingStep(new Float64Array(100))).toBeNull();
    expect(roundingStep(new Float64Array(100).fill(Number.NaN))).toBeNull();
  });

  test('it scales with the values', () => {
    const values = rounded(climb(2000, 0.37), 1);
    expect(roundingStep(values.map((x) => x * 1e-9))).toBeCloseTo(1e-9, 18);
    expect(roundingStep(values.map((x) => x * 1e9))).toBeCloseTo(1e9, -1);
  });
});
