import { expect, test } from 'vitest';
import { StepSums } from '../../src/log/stepSums.ts';

const sorted = (values: readonly number[]) => Float64Array.from(values).sort();
const random = (() => {
  let seed = 7;
  return (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
})();

test('what has no step is ruled out at any guess', () => {
  const smooth = sorted(Array.from({ length: 5000 }, () => 100 * random()));
  const sums = new StepSums(smooth);
  for (const guess of [0.1, 1, 7.3, 50]) expect(sums.refined(guess)).toBeNull();
});

test('a step that is there is found, and left open where rounding could decide', () => {
  const steps = sorted(Array.from({ length: 5000 }, () => 0.3 * Math.ceil(6 * random())));
  const sums = new StepSums(steps);
  for (const guess of [0.3, 0.305]) expect(sums.refined(guess)).toBeCloseTo(0.3, 12);
  // Twice the step leaves odd numbers of steps on the border.
  expect(sums.refined(0.6)).toBeUndefined();
});

test('too few changes, or none near the guess, are no step', () => {
  expect(new StepSums(sorted([1, 2, 3])).refined(1)).toBeNull();
  expect(new StepSums(sorted(Array.from({ length: 100 }, () => 1))).refined(1e-3)).toBeNull();
});
