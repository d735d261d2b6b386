import { describe, expect, test } from 'vitest';
import { constrainedMinimum } from '../../src/refly/constrainedMinimum.ts';

const line = { size: 1, constraints: 0, lower: Float64Array.of(-5), upper: Float64Array.of(5) };

describe('constrainedMinimum', () => {
  test('walks round a region without values', () => {
    const end = constrainedMinimum(
      { ...line, evaluate: (x) => (x[0]! < -0.5 ? Number.NaN : x[0]! ** 2) },
      [3],
      {
        longestStep: 10,
      },
    );
    expect(Math.abs(end.x[0]!)).toBeLessThan(1e-5);
  });

  test('a start without a value is given back', () => {
    const end = constrainedMinimum({ ...line, evaluate: () => Number.NaN }, [3]);
    expect(end.settled).toBe(false);
    expect(end.value).toBeNaN();
    expect(end.x[0]).toBe(3);
  });

  test('stops when asked to', () => {
    let asked = 0;
    const end = constrainedMinimum({ ...line, evaluate: (x) => Math.cosh(x[0]! - 1) }, [-4], {
      stop: () => ++asked > 2,
    });
    expect(end.rounds).toBe(2);
    expect(end.settled).toBe(false);
  });

  test('with nothing to vary it gives the value', () => {
    const none = { size: 0, constraints: 0, lower: new Float64Array(0), upper: new Float64Array(0) };
    const end = constrainedMinimum({ ...none, evaluate: () => 7 }, []);
    expect(end.value).toBe(7);
    expect(end.settled).toBe(true);
  });
});
