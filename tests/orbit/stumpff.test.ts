import { expect, test } from 'vitest';
import { stumpff } from '../../src/orbit/stumpff.ts';

/** The series itself, summed until nothing more is added. */
function series(k: number, z: number): number {
  let term = 1;
  for (let i = 2; i <= k; i++) term /= i;
  let sum = term;
  for (let n = 1; n < 200; n++) {
    term *= -z / ((k + 2 * n) * (k + 2 * n - 1));
    sum += term;
  }
  return sum;
}

test('all four functions agree with their series, closed forms and short series alike', () => {
  for (const z of [-20, -1, -0.1000001, -0.1, -1e-3, 0, 1e-8, 0.0999, 0.1, 0.1000001, 2, 9]) {
    const { c0, c1, c2, c3 } = stumpff(z);
    // Closed forms of c2 and c3 lose some 20 units of the last place where they begin, at |z| = 0.1.
    for (const [k, value] of [c0, c1, c2, c3].entries()) {
      const true_ = series(k, z);
      expect(Math.abs(value - true_)).toBeLessThan(2e-14 * Math.max(1, Math.abs(true_)));
    }
  }
});

test('writes into the object given', () => {
  const into = { c0: 0, c1: 0, c2: 0, c3: 0 };
  expect(stumpff(1, into)).toBe(into);
  expect(into.c0).toBeCloseTo(Math.cos(1), 15);
});
