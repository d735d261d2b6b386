import { describe, expect, test } from 'vitest';
import { localPolynomial } from '../../src/flight/localPolynomial.ts';

/** Response of the filter to a unit impulse: its coefficients, read from the middle sample's fit. */
function coefficients(points: number, degree: 1 | 2 | 3, which: 'value' | 'rate'): number[] {
  const half = (points - 1) / 2;
  const t = Float64Array.from({ length: points }, (_, i) => i - half);
  return Array.from(t, (_, k) => {
    const y = t.map((_, i) => (i === k ? 1 : 0));
    return localPolynomial(t, y, Float64Array.of(0), {
      degree,
      window_s: points,
      minPoints: points,
      breaks: [],
    })[which][0]!;
  });
}

function close(actual: number[], expected: number[]): void {
  expect(actual.length).toBe(expected.length);
  actual.forEach((a, i) => {
    // Rounding of a 4 × 4 elimination.
    expect(a).toBeCloseTo(expected[i]!, 12);
  });
}

describe('on even steps it is the filter of Savitzky & Golay 1964', () => {
  test('quadratic smooth of 5, 7 and 9 points (1964 table; numerical-smoothing article of a handwiki)', () => {
    close(
      coefficients(5, 2, 'value'),
      [-3, 12, 17, 12, -3].map((c) => c / 35),
    );
    close(
      coefficients(7, 2, 'value'),
      [-2, 3, 6, 7, 6, 3, -2].map((c) => c / 21),
    );
    close(
      coefficients(9, 2, 'value'),
      [-21, 14, 39, 54, 59, 54, 39, 14, -21].map((c) => c / 231),
    );
  });
  test('first derivative, quadratic 5 and 7 points, cubic 5 and 7 points (1964 tables)', () => {
    close(
      coefficients(5, 2, 'rate'),
      [-2, -1, 0, 1, 2].map((c) => c / 10),
    );
    close(
      coefficients(7, 2, 'rate'),
      [-3, -2, -1, 0, 1, 2, 3].map((c) => c / 28),
    );
    close(
      coefficients(5, 3, 'rate'),
      [1, -8, 0, 8, -1].map((c) => c / 12),
    );
    close(
      coefficients(7, 3, 'rate'),
      [22, -67, -58, 0, 58, 67, -22].map((c) => c / 252),
    );
  });
});

test('a cubic comes back exactly on uneven times', () => {
  const t = Float64Array.of(0, 0.1, 0.35, 0.4, 0.9, 1.3, 1.31, 2, 2.4, 2.5, 3.3);
  const f = (x: number) => 3 - 2 * x + 0.7 * x * x - 0.11 * x ** 3;
  const d = (x: number) => -2 + 1.4 * x - 0.33 * x * x;
  const fit = localPolynomial(t, t.map(f), t, { degree: 3, window_s: 1.2, minPoints: 5, breaks: [] });
  t.forEach((x, i) => {
    expect(fit.value[i]).toBeCloseTo(f(x), 9);
    expect(fit.rate[i]).toBeCloseTo(d(x), 8);
  });
});

test('a kink at a break is not smeared, and the break is answered from the side asked for', () => {
  const t = Float64Array.from({ length: 41 }, (_, i) => i * 0.1);
  const y = t.map((x) => (x <= 2 ? 5 * x : 10 - 3 * (x - 2)));
  for (const [side, slope] of [
    ['before', 5],
    ['after', -3],
  ] as const) {
    const fit = localPolynomial(t, y, t, {
      degree: 2,
      window_s: 0.9,
      minPoints: 4,
      breaks: [{ time_s: 2, side }],
    });
    t.forEach((x, i) => {
      const wanted = Math.abs(x - 2) < 1e-9 ? slope : x < 2 ? 5 : -3;
      expect(fit.rate[i]).toBeCloseTo(wanted, 9);
    });
  }
});

test('scale and shift of the times change the rate as they must', () => {
  const t = Float64Array.from({ length: 30 }, (_, i) => i * 0.2 + 0.05 * Math.sin(i));
  const y = t.map((x) => Math.sin(x));
  const base = localPolynomial(t, y, t, { degree: 3, window_s: 1.4, minPoints: 5, breaks: [] });
  const moved = t.map((x) => 1000 * (x + 17));
  const other = localPolynomial(moved, y, moved, { degree: 3, window_s: 1400, minPoints: 5, breaks: [] });
  base.rate.forEach((r, i) => {
    expect(other.rate[i]! * 1000).toBeCloseTo(r, 8);
  });
});
