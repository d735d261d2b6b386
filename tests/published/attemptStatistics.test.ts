import { describe, expect, test } from 'vitest';
import { pairedTest, twoSampleTest } from '../../src/attempts/permutationTest.ts';
import { rankCorrelation } from '../../src/attempts/rankCorrelation.ts';
import { theilSen } from '../../src/attempts/theilSen.ts';

describe('Theil–Sen, example of Sen 1968 (data and results as in cran/deming tests/theil.R)', () => {
  const t = [1, 2, 3, 4, 10, 12, 18];
  const y = [9, 15, 19, 20, 45, 55, 78];

  test('slope 4, intercept 6', () => {
    const line = theilSen(t, y, 0.93)!;
    expect(line.slope).toBe(4);
    expect(line.intercept).toBe(6);
  });

  test('93 % interval from 26/7 to 35/8', () => {
    const line = theilSen(t, y, 0.93)!;
    expect(line.low).toBeCloseTo(26 / 7, 12);
    expect(line.high).toBeCloseTo(35 / 8, 12);
    // The large-sample rule rounds outward: P(S ≥ 15) = 76/5040 for seven points.
    expect(line.confidence).toBeCloseTo(1 - (2 * 76) / 5040, 12);
  });
});

describe('permutation tests (data from memory, arrangements counted by an independent program)', () => {
  test('survival of mice, Efron & Tibshirani 1993: 1613 of 11440', () => {
    const treated = [94, 197, 16, 38, 99, 141, 23];
    const control = [52, 104, 146, 10, 51, 30, 40, 27, 46];
    const result = twoSampleTest(treated, control)!;
    expect(result.difference).toBeCloseTo(30.635, 3);
    expect([result.asFarOneWay, result.arrangements]).toEqual([1613, 11440]);
    expect(result.exact).toBe(true);
  });

  test('Darwin’s maize, Fisher 1935: 863 of 32768 one way, 1726 either way', () => {
    const differences = [49, -67, 8, 16, 6, 23, 28, 41, 14, 29, 56, 24, 75, 60, -48];
    const result = pairedTest(differences)!;
    expect(result.difference * 15).toBeCloseTo(314, 9);
    expect([result.asFarOneWay, result.asFar, result.arrangements]).toEqual([863, 1726, 32768]);
    expect(result.p).toBeCloseTo(0.05267, 5);
  });
});

test('rank correlation of the textbook’s ten pairs is −29/165 (data from memory)', () => {
  const iq = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110];
  const hours = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17];
  const result = rankCorrelation(iq, hours)!;
  expect(result.rho).toBeCloseTo(-29 / 165, 12);
  // Student's t gives 0.627 there; 5000 draws scatter by 0.007, and the two are not the same test.
  expect(Math.abs(result.p - 0.627)).toBeLessThan(0.03);
});
