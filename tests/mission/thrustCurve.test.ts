import { expect, test } from 'vitest';
import { meanThrust_N, peakThrust_N, totalImpulse_N_s } from '../../src/mission/thrustCurve.ts';

const triangle = [
  [0, 0],
  [1, 200],
  [4, 0],
] as const;

test('impulse, mean and peak of a triangle', () => {
  expect(totalImpulse_N_s(triangle)).toBe(400);
  expect(meanThrust_N(triangle)).toBe(100);
  expect(peakThrust_N(triangle)).toBe(200);
});
