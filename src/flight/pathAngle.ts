import type { Kinematics } from './kinematics.ts';

/** Share of the speed that the altitude rate's error may reach before pitch gives the angle (METHODS §1). */
const NOISY_SHARE = 0.02;

/**
 * Flight-path angle of the ground-relative velocity, rad. Where the vertical speed's error exceeds 2 % of the
 * speed the pitch channel gives it (the vertical, where there is no pitch); elsewhere it is asin(ḣ/|v|).
 */
export function pathAngle(path: Kinematics, pitch: Float64Array | null): Float64Array {
  const out = new Float64Array(path.speed.length);
  const sigma = path.verticalSpeedSigma_m_s;
  for (let i = 0; i < out.length; i++) {
    const v = path.speed[i]!;
    if (v <= 0 || sigma > NOISY_SHARE * v) {
      const stand = pitch?.[i] ?? Number.NaN;
      out[i] = Number.isFinite(stand) ? stand : v > 0 ? slope(path, i) : Math.PI / 2;
    } else out[i] = slope(path, i);
  }
  return out;
}

function slope(path: Kinematics, i: number): number {
  return Math.asin(Math.max(-1, Math.min(1, path.verticalSpeed[i]! / path.speed[i]!)));
}
