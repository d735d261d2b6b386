import { expect, test } from 'vitest';
import { goldenSection } from '../../src/orbit/goldenSection.ts';

test('finds the least place between the bounds, or the bound it presses against', () => {
  expect(goldenSection((x) => (x - 2) ** 2, 0, 5, 1e-9)).toBeCloseTo(2, 7);
  expect(goldenSection((x) => Math.abs(x - 1), 0, 5, 1e-9)).toBeCloseTo(1, 8);
  expect(goldenSection((x) => x, 3, 5, 1e-9)).toBeCloseTo(3, 8);
});
