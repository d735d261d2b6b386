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
  for (const guess of [0.1, 1, 7.3, 50]) expect(sums.rulesOut(guess)).toBe(true);
});

test('a step that is there is not, nor one that rounding could decide', () => {
  const steps = sorted(Array.from({ length: 5000 }, () => 0.3 * Math.ceil(6 * random())));
  const sums = new StepSums(steps);
  // The step itself, a little off; and twice it, which leaves odd numbers of steps on the border.
  for (const guess of [0.3, 0.305, 0.6]) expect(sums.rulesOut(guess)).toBe(false);
});

test('too few changes, or none near the guess, are no step', () => {
  expect(new StepSums(sorted([1, 2, 3])).rulesOut(1)).toBe(true);
  expect(new StepSums(sorted(Array.from({ length: 100 }, () => 1))).rulesOut(1e-3)).toBe(true);
});
