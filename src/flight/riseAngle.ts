import type { World } from '../world/types.ts';

/**
 * The path's angle while the vehicle rises almost vertically. There asin(ḣ/|v|) has no slope and turns the
 * altitude rate's noise into degrees; the horizontal speed, gathered from the pitch since lift-off, is far surer.
 */

export interface RiseInput {
  readonly world: World;
  readonly latitude_rad: number;
  readonly azimuth_rad: number;
  readonly time: Float64Array;
  readonly radius: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  /** One-sigma errors of the vertical speed, m/s, and of a pitch sample, rad. */
  readonly verticalSigma_m_s: number;
  /** One-sigma error of a speed sample, m/s. */
  readonly speedSigma_m_s: number;
  readonly pitchSigma_rad: number;
  readonly pitch: Float64Array;
  /** First and last axis index between which the vehicle rises under thrust. */
  readonly from: number;
  readonly to: number;
}

/**
 * Share of the gathered horizontal speed that its model may miss (drag along thrust, thrust along the path): the
 * bound that it is weighed by against the altitude, and its one sigma.
 */
const MODEL_BOUND = 0.03;
const MODEL_SIGMA = 0.01;
/** Below this error of the vertical speed the altitude alone is good enough. */
const CLEAN_M_S = 0.002;

/**
 * Fuses both readings of the flight-path angle by their variances, from lift-off until the altitude's is much the
 * surer. Horizontal speed: dw = (d|v| + g·sin γ dt)·cos θ − 2ω·cos φ·sin A·ḣ dt (the equation of motion along the
 * path, turned by the pitch; Coriolis). Changes `angle` and `verticalSpeed` in place and returns the angle's
 * one-sigma error, NaN where the altitude's reading stands alone.
 */
export function fuseRise(input: RiseInput, angle: Float64Array, verticalSpeed: Float64Array): Float64Array {
  const { world, time, radius, speed, pitch, from, to } = input;
  const sigma = new Float64Array(time.length).fill(Number.NaN);
  // ḣ/|v| errs by either; the smoothed speed by about a third of its samples.
  const ratioSigma = Math.hypot(input.verticalSigma_m_s, input.speedSigma_m_s / 3);
  if (ratioSigma < CLEAN_M_S) return sigma;
  const eastward = 2 * world.spin_rad_s * Math.cos(input.latitude_rad) * Math.sin(input.azimuth_rad);
  let across = 0;
  let variance = 0;
  let past = 0;
  for (let i = from; i <= to; i++) {
    const v = speed[i]!;
    if (i > from) {
      const dt = time[i]! - time[i - 1]!;
      const g = world.mu_m3_s2 / radius[i]! ** 2;
      const sine = Math.sin(angle[i - 1]!);
      const push = v - speed[i - 1]! + g * sine * dt;
      const theta = (pitch[i]! + pitch[i - 1]!) / 2;
      across += push * Math.cos(theta) - eastward * v * sine * dt;
      variance += (push * input.pitchSigma_rad) ** 2 / 2;
    }
    if (!(v > 0.5)) {
      angle[i] = Math.PI / 2;
      verticalSpeed[i] = v;
      sigma[i] = 0.05;
      continue;
    }
    const gathered = Math.acos(Math.max(-1, Math.min(1, Math.abs(across) / v)));
    const sigmaGathered = Math.sqrt(variance + (MODEL_BOUND * across) ** 2 + 0.01) / v;
    const share = Math.max(-1, Math.min(1, input.verticalSpeed[i]! / v));
    const seen = Math.asin(share);
    const sigmaSeen = ratioSigma / v / Math.max(Math.cos(gathered), 0.02);
    const weight = 1 / (1 + (sigmaGathered / sigmaSeen) ** 2);
    const fused = weight * gathered + (1 - weight) * seen;
    angle[i] = fused;
    verticalSpeed[i] = v * Math.sin(fused);
    // The altitude's part of the error comes back with the next samples; the gathered part stays.
    sigma[i] = (weight * Math.sqrt(variance + (MODEL_SIGMA * across) ** 2 + 0.0025)) / v;
    past = weight < 0.05 ? past + 1 : 0;
    if (past > 10) break;
  }
  return sigma;
}
