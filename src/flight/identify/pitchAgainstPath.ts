import type { Flight } from '../types.ts';
import { leastSquares } from './leastSquares.ts';

/** What the path says about the pitch channel. */
export interface PitchReading {
  /** How the channel must be counted for the path to turn as it does. */
  readonly sense: 'from-horizon' | 'from-vertical';
  /** Angle by which the thrust axis lies above the pitch as read, and its one-sigma error, rad. */
  readonly bias_rad: number;
  readonly sigma_rad: number;
}

/** Another sense must leave this many times less of the vertical speed to be believed. */
const MUCH_BETTER = 5;
/** Thrust is known to about this share; its error turns the fitted axis. */
const THRUST_SHARE = 0.006;
/** Points of the flight that are looked at. */
const MOST = 400;

/**
 * Fits the vertical equation of motion, integrated over the ascent's burns:
 *   ḣ = ḣ₀ + ∫(T/m·sin(θ + δ) − D/m·sin γ − μ/r² + V_h²/r) dt, first order in δ.
 * `drag` is drag over mass on the axis, m/s²; null = unknown, taken as none.
 * Null where thrust, pitch or enough powered flight is missing.
 */
export function pitchAgainstPath(flight: Flight, drag: Float64Array | null): PitchReading | null {
  const { pitch, gaps, time, radius, track, verticalSpeed, mission, flightPathAngle } = flight;
  if (pitch === null || !gaps.known || flight.burns.length === 0) return null;
  const normal = readWith((theta) => theta);
  if (normal === null) return null;
  const turned = readWith((theta) => Math.PI / 2 - theta);
  const sense = turned !== null && turned.rms * MUCH_BETTER < normal.rms ? 'from-vertical' : 'from-horizon';
  return { sense, bias_rad: normal.bias, sigma_rad: normal.sigma };

  function readWith(read: (theta: number) => number): { bias: number; sigma: number; rms: number } | null {
    const rows: number[] = [];
    const response: number[] = [];
    const burns = flight.burns.filter((b) => b.endIndex - b.startIndex > 10);
    const cols = 1 + burns.length;
    let lever = 0;
    let reach = 0;
    burns.forEach((burn, b) => {
      let gathered = 0;
      let turn = 0;
      const from = Math.max(burn.startIndex, flight.liftOffIndex);
      const stride = Math.max(1, Math.ceil((burn.endIndex - from) / (MOST / burns.length)));
      for (let i = from; i <= burn.endIndex; i++) {
        if (i > from) {
          const k = i - 1;
          const dt = time[i]! - time[k]!;
          const push = gaps.vacuum[k]! - gaps.back[k]!;
          const theta = (read(pitch![k]!) + read(pitch![i]!)) / 2;
          const r = (radius[k]! + radius[i]!) / 2;
          const across = (track.inertialHorizontalSpeed[k]! + track.inertialHorizontalSpeed[i]!) / 2;
          const air = drag?.[i] ?? 0;
          gathered +=
            push * Math.sin(theta) +
            (-mission.world.mu_m3_s2 / (r * r) +
              (across * across) / r -
              air * Math.sin(flightPathAngle[i]!)) *
              dt;
          turn += push * Math.cos(theta);
          reach += Math.abs(push * Math.sin(theta));
        }
        if ((i - from) % stride !== 0) continue;
        const row = new Array<number>(cols).fill(0);
        row[0] = turn;
        row[1 + b] = 1;
        rows.push(...row);
        response.push(verticalSpeed[i]! - gathered);
      }
      lever += turn;
    });
    if (response.length < 3 * cols || lever < 100) return null;
    const solved = leastSquares(cols, Float64Array.from(rows), Float64Array.from(response));
    const rms = Math.sqrt(solved.residualSquares / response.length);
    const scatter = Math.sqrt(solved.inverseNormal[0]! * (solved.residualSquares / response.length));
    return { bias: solved.x[0]!, sigma: Math.hypot(3 * scatter, (THRUST_SHARE * reach) / lever), rms };
  }
}
