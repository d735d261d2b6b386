import { describe, expect, test } from 'vitest';
import type { QuadraticModel } from '../../src/refly/quadraticStep.ts';
import { quadraticStep } from '../../src/refly/quadraticStep.ts';

function model(more: Partial<QuadraticModel>): QuadraticModel {
  return {
    gradient: Float64Array.of(-2, -5),
    hessian: Float64Array.of(2, 0, 0, 2),
    constraint: new Float64Array(0),
    slopes: new Float64Array(0),
    down: Float64Array.of(-9, -9),
    up: Float64Array.of(9, 9),
    ...more,
  };
}

describe('quadraticStep', () => {
  test('goes to the free minimum', () => {
    const step = new Float64Array(2);
    expect(quadraticStep(model({}), step, new Float64Array(0))).toBe(true);
    expect(step[0]).toBeCloseTo(1, 12);
    expect(step[1]).toBeCloseTo(2.5, 12);
  });

  test('keeps a linear constraint, with its multiplier', () => {
    // x + y = 1: by symmetry x − y = −1.5, and 2x − 2 + λ = 0.
    const step = new Float64Array(2);
    const multipliers = new Float64Array(1);
    quadraticStep(
      model({ constraint: Float64Array.of(-1), slopes: Float64Array.of(1, 1) }),
      step,
      multipliers,
    );
    expect(step[0]).toBeCloseTo(-0.25, 8);
    expect(step[1]).toBeCloseTo(1.25, 8);
    expect(multipliers[0]).toBeCloseTo(2.5, 8);
  });

  test('stops at a wall and moves on along it', () => {
    const step = new Float64Array(2);
    quadraticStep(
      model({ hessian: Float64Array.of(2, 1, 1, 2), up: Float64Array.of(9, 1) }),
      step,
      new Float64Array(0),
    );
    // At y = 1: 2x + 1 − 2 = 0.
    expect(step[0]).toBeCloseTo(0.5, 12);
    expect(step[1]).toBe(1);
  });

  test('leaves a wall again that only an earlier wall led to', () => {
    // The free minimum breaks both walls; with x at its wall the best y lies inside.
    const step = new Float64Array(2);
    quadraticStep(
      model({
        gradient: Float64Array.of(-10, -8),
        hessian: Float64Array.of(2, 1.8, 1.8, 2),
        up: Float64Array.of(0.5, 3.6),
        down: Float64Array.of(-9, -0.1),
      }),
      step,
      new Float64Array(0),
    );
    expect(step[0]).toBeCloseTo(0.5, 9);
    expect(step[1]).toBeCloseTo((8 - 0.9) / 2, 9);
  });
});
