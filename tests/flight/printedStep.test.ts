import { expect, test } from 'vitest';
import { printedStep } from '../../src/flight/printedStep.ts';

const falling = Array.from({ length: 200 }, (_, i) => 543210.123 - 49.83 * i);

test.each([10, 5, 2, 0.1])('values rounded to %s', (step) => {
  const values = Float64Array.from(falling, (x) => Math.round(x / step) * step);
  expect(printedStep(values)).toBeCloseTo(step, 9);
});

test('the step is sought in the written unit', () => {
  const pound = 0.45359237;
  const values = Float64Array.from(falling, (x) => Math.round(x / 100) * 100 * pound);
  expect(printedStep(values, pound)).toBeCloseTo(100 * pound, 9);
});

test('unrounded values and short channels have none', () => {
  expect(printedStep(Float64Array.from(falling, (x) => x * Math.PI))).toBe(0);
  expect(printedStep(Float64Array.of(10, 20, 30))).toBe(0);
});
