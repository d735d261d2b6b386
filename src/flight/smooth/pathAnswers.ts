import type { Smoothed } from './kalman.ts';
import { CHAIN, SIZE } from './pathEvidence.ts';

/** The path that agrees best with all channels at once, on `query`, with one-sigma errors. */
export interface FusedPath {
  readonly altitude: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly horizontalSpeed: Float64Array;
  readonly altitudeSigma: Float64Array;
  readonly verticalSigma: Float64Array;
  readonly horizontalSigma: Float64Array;
  /** Spectral density of the jerk that the samples themselves make likeliest, (m/s³)²·s. */
  readonly jerkDensity: number;
}

/** State at the times asked for, from the node before each by the motion between it and the node after. */
export function answers(
  query: Float64Array,
  time: Float64Array,
  { mean, covariance }: Smoothed,
  jerkDensity: number,
): FusedPath {
  const n = query.length;
  const out: FusedPath = {
    altitude: new Float64Array(n),
    verticalSpeed: new Float64Array(n),
    horizontalSpeed: new Float64Array(n),
    altitudeSigma: new Float64Array(n),
    verticalSigma: new Float64Array(n),
    horizontalSigma: new Float64Array(n),
    jerkDensity,
  };
  let k = 0;
  const last = time.length - 1;
  for (let q = 0; q < n; q++) {
    const at = query[q]!;
    while (k < last && time[k + 1]! <= at) k++;
    const next = Math.min(last, k + 1);
    const gap = time[next]! - time[k]!;
    const x = gap > 0 ? Math.max(0, Math.min(1, (at - time[k]!) / gap)) : 0;
    const between = (i: number): number => {
      const a = Math.max(0, covariance[(k * SIZE + i) * SIZE + i]!);
      return Math.sqrt(a + x * (Math.max(0, covariance[(next * SIZE + i) * SIZE + i]!) - a));
    };
    const h = (i: number): [number, number] => quintic(mean, k * SIZE + i, next * SIZE + i, gap, x);
    const up = h(0);
    const across = h(CHAIN);
    out.altitude[q] = up[0];
    out.verticalSpeed[q] = up[1];
    // No ascent goes backward: below zero lies only the error.
    out.horizontalSpeed[q] = Math.max(0, across[1]);
    out.altitudeSigma[q] = between(0);
    out.verticalSigma[q] = between(1);
    out.horizontalSigma[q] = between(CHAIN + 1);
  }
  return out;
}

/**
 * Value and rate at share x of a gap whose ends' value, rate and second derivative stand at `a` and `b`: the mean of
 * a motion under white jerk given both ends is the polynomial of fifth degree through them (quintic Hermite).
 */
function quintic(state: Float64Array, a: number, b: number, gap: number, x: number): [number, number] {
  const p0 = state[a]!;
  const v0 = state[a + 1]! * gap;
  const c0 = (state[a + 2]! * gap * gap) / 2;
  if (gap === 0) return [p0, state[a + 1]!];
  const d = state[b]! - p0 - v0 - c0;
  const e = state[b + 1]! * gap - v0 - 2 * c0;
  const f = (state[b + 2]! * gap * gap) / 2 - c0;
  const c3 = 10 * d - 4 * e + f;
  const c4 = -15 * d + 7 * e - 2 * f;
  const c5 = 6 * d - 3 * e + f;
  return [
    p0 + x * (v0 + x * (c0 + x * (c3 + x * (c4 + x * c5)))),
    (v0 + x * (2 * c0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / gap,
  ];
}
