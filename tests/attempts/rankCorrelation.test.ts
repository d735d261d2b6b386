import { expect, test } from 'vitest';
import { rankCorrelation } from '../../src/attempts/rankCorrelation.ts';

test('the same order is 1, the opposite −1, and two of n! orders are as far', () => {
  const x = [1, 2, 3, 4, 5];
  const rising = rankCorrelation(x, [2, 3, 5, 8, 13])!;
  expect(rising).toMatchObject({ exact: true, points: 5 });
  expect(rising.rho).toBeCloseTo(1, 12);
  expect(rankCorrelation(x, [2, 3, 5, 8, 13])!.p).toBeCloseTo(2 / 120, 12);
  expect(rankCorrelation(x, [5, 4, 3, 2, 1])!.rho).toBeCloseTo(-1, 12);
});

test('ties take mid-ranks', () => {
  // Ranks 0, 1.5, 1.5, 3 against 0, 1, 2, 3: rho = 4.5/√(4.5·5).
  expect(rankCorrelation([1, 2, 2, 3], [1, 2, 3, 4])!.rho).toBeCloseTo(4.5 / Math.sqrt(22.5), 12);
});

test('drawn orders give what counting gives', () => {
  const x = [1, 2, 3, 4, 5, 6, 7, 8, 9];
  const y = [2, 1, 4, 3, 6, 5, 8, 7, 9];
  const drawn = rankCorrelation(x, y)!;
  expect(drawn.exact).toBe(false);
  expect(drawn.p).toBeLessThan(0.005);
});

test('two points, or one value throughout, have no correlation', () => {
  expect(rankCorrelation([1, 2], [1, 2])).toBeNull();
  expect(rankCorrelation([1, 2, 3], [4, 4, 4])).toBeNull();
});
