import { expect, test } from 'vitest';
import { isDragLike } from '../../src/flight/dragLike.ts';
import type { PathMotion } from '../../src/flight/forceBurns.ts';

/** A straight fall through air of scale height 7 km with a force against the motion, at 5 Hz. */
function falling(force: (q: number, t: number) => number, from_m = 40_000, speed = 800): PathMotion {
  const n = 300;
  const t = Float64Array.from({ length: n }, (_, i) => i / 5);
  const v = new Float64Array(n);
  const q = new Float64Array(n);
  let h = from_m;
  let s = speed;
  for (let i = 0; i < n; i++) {
    v[i] = s;
    q[i] = 0.5 * 1.2 * Math.exp(-h / 7000) * s * s;
    s = Math.max(2, s + (9.8 - force(q[i]!, t[i]!)) / 5);
    h -= s / 5;
  }
  return {
    t,
    speed: v,
    coasting: new Float64Array(n).fill(9.8),
    dynamicPressure: q,
    speedSigma_m_s: 0.01,
    rise_s: Number.POSITIVE_INFINITY,
  };
}

test('drag of a body and of a canopy goes with the dynamic pressure', () => {
  expect(
    isDragLike(
      falling((q) => 0.002 * q),
      2,
      25,
    ),
  ).toBe(true);
  expect(
    isDragLike(
      falling((q) => 0.05 * q, 5000, 120),
      5,
      50,
    ),
  ).toBe(true);
});

test('an engine keeps its force while the pressure changes', () => {
  expect(
    isDragLike(
      falling(() => 30),
      2,
      22,
    ),
  ).toBe(false);
});

test('a stretch too short to compare is left to the engines', () => {
  expect(
    isDragLike(
      falling((q) => 0.002 * q),
      20,
      24,
    ),
  ).toBe(false);
});
