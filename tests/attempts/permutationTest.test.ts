import { permutationTest } from 'simple-statistics';
import { expect, test } from 'vitest';
import { pairedTest, twoSampleTest } from '../../src/attempts/permutationTest.ts';
import { seededRandom } from '../../src/attempts/seededRandom.ts';

test('the same samples differ in no way, all arrangements are as far', () => {
  const result = twoSampleTest([1, 2, 3], [3, 2, 1])!;
  expect(result.difference).toBe(0);
  expect(result.p).toBe(1);
});

test('three against three can never be surer than 2 in 20', () => {
  const result = twoSampleTest([10, 11, 12], [1, 2, 3])!;
  expect([result.asFar, result.arrangements, result.p, result.leastP]).toEqual([2, 20, 0.1, 0.1]);
});

test('drawn by lot it agrees with the exact share and with a second opinion', () => {
  const random = seededRandom(7);
  const a = Array.from({ length: 14 }, () => random() + 0.2);
  const b = Array.from({ length: 14 }, () => random());
  const drawn = twoSampleTest(a, b)!;
  expect(drawn.exact).toBe(false);
  const other = permutationTest(a, b, 'two_side', 20000, seededRandom(3));
  // Both scatter by √(p(1−p)/20000) ≤ 0.0035.
  expect(Math.abs(drawn.p - other)).toBeLessThan(0.015);
});

test('signs of twenty differences are drawn, of none nothing is said', () => {
  const differences = Array.from({ length: 20 }, (_, i) => (i % 5) - 1.4);
  expect(pairedTest(differences)!.exact).toBe(false);
  expect(pairedTest([])).toBeNull();
  expect(twoSampleTest([], [1])).toBeNull();
});
