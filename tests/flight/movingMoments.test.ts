import { describe, expect, test } from 'vitest';
import { localPolynomial } from '../../src/flight/localPolynomial.ts';
import { MovingMoments } from '../../src/flight/movingMoments.ts';

/** Uneven steps about 1 ms, from a fixed generator. */
function times(count: number): Float64Array {
  let seed = 7;
  let at = 0;
  return Float64Array.from({ length: count }, () => {
    seed = (seed * 1_664_525 + 1_013_904_223) % 2 ** 32;
    at += 0.0005 + (0.001 * seed) / 2 ** 32;
    return at;
  });
}

describe('MovingMoments', () => {
  test('the sums carried along are the sums formed anew', () => {
    const t = times(20_000);
    const y = t.map((x) => 5e4 + 300 * x + Math.sin(3 * x));
    const moving = new MovingMoments(t, y, 1);
    const sums = new Float64Array(7);
    const rhs = new Float64Array(4);
    let worst = 0;
    for (let q = 1000; q < 19_000; q += 7) {
      const at = t[q]!;
      const [from, to] = [q - 900, q + 700];
      const y0 = moving.about(at, from, to, 3, sums, rhs);
      if (q % 490 !== 20) continue;
      for (let k = 0; k <= 6; k++) {
        let sum = 0;
        let product = 0;
        for (let i = from; i < to; i++) {
          const x = (t[i]! - at) ** k;
          sum += x;
          product += x * (y[i]! - y0);
        }
        worst = Math.max(worst, Math.abs(sums[k]! - sum) / 1600);
        if (k <= 3) worst = Math.max(worst, Math.abs(rhs[k]! - product) / (1600 * 300));
      }
    }
    // Measured 3e-15.
    expect(worst).toBeLessThan(2e-14);
  });
});

test('a cubic through dense samples is itself, value and rate, on both sides of a break', () => {
  const t = times(6000);
  const cubic = (x: number) => 1000 + 20 * x - 3 * x * x + 0.4 * x ** 3;
  const cut = t[3000]!;
  const y = t.map((x) => cubic(x) + (x > cut ? 500 : 0));
  const breaks = [{ time_s: cut, side: 'before' }] as const;
  const { value, rate } = localPolynomial(t, y, t, { degree: 3, window_s: 1, minPoints: 5, breaks });
  const off = t.map((x, i) => Math.abs(value[i]! - y[i]!) + Math.abs(rate[i]! - (20 - 6 * x + 1.2 * x * x)));
  // Measured 2.5e-11.
  expect(Math.max(...off)).toBeLessThan(2e-10);
});
