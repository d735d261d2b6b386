import { expect, test } from 'vitest';
import { nextThrustNode_s, solidThrust_N } from '../../src/refly/solidMotor.ts';

const curve = [
  [0, 100],
  [2, 300],
  [5, 0],
] as const;

test('thrust runs straight between nodes and is none outside', () => {
  expect([-1, 0, 1, 2, 3.5, 5, 6].map((t) => solidThrust_N(curve, t))).toEqual([0, 100, 200, 300, 150, 0, 0]);
});

test('names the next kink', () => {
  expect([-1, 0, 2, 5].map((t) => nextThrustNode_s(curve, t))).toEqual([0, 2, 5, Number.POSITIVE_INFINITY]);
});
