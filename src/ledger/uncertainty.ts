import type { Flight } from '../flight/types.ts';
import type { LossCurves } from './lossCurves.ts';

/** One-sigma errors of the ledger's entries, m/s, from the noise and the sampling of the log. */
export interface LedgerSigmas {
  readonly ideal: number;
  readonly backPressure: number;
  readonly steering: number;
  readonly drag: number;
  readonly gravity: number;
  readonly frame: number;
  readonly holdDown: number;
  readonly speedGained: number;
}

/** Samples that a smoothed end value leans on. */
const END_SAMPLES = 6;
/** A gap longer than this, and than four usual steps, is bounded by what could have happened inside it. */
const LONG_GAP_S = 2;

/**
 * Propagates the channels' noise through the integrals to first order. White sample noise averages out along an
 * integral; the derived vertical speed is correlated over its smoothing window. To each comes the trapezoid
 * rule's own error, judged from the integrand's bend from gap to gap.
 */
export function ledgerSigmas(flight: Flight, curves: LossCurves): LedgerSigmas {
  const { time, noise, speed, gaps, radius, mission, mass } = flight;
  const mu = mission.world.mu_m3_s2;
  let gravity = 0;
  let steering = 0;
  let drag = 0;
  let ideal = 0;
  let gapBound = 0;
  const longGap = Math.max(LONG_GAP_S, (4 * (time[time.length - 1]! - time[0]!)) / time.length);
  const window =
    noise.verticalSpeed_m_s > 0 && noise.altitude_m > 0
      ? Math.min(12, noise.altitude_m / noise.verticalSpeed_m_s)
      : 0;
  for (let i = curves.start + 1; i <= curves.end; i++) {
    const dt = time[i]! - time[i - 1]!;
    const v = Math.max(speed[i]!, 5);
    const g = mu / (radius[i]! * radius[i]!);
    gravity += ((g * noise.verticalSpeed_m_s) / v) ** 2 * dt * Math.max(dt, window);
    const thrust = gaps.vacuum[i - 1]! - gaps.back[i - 1]!;
    if (flight.pitch !== null && thrust > 0) {
      const alpha = Math.min(1, noise.verticalSpeed_m_s / v);
      steering +=
        (thrust * Math.sin(angleOff(flight, i))) ** 2 *
        (noise.pitch_rad ** 2 + alpha ** 2 * Math.max(1, window / dt));
    }
    if (curves.drag !== null && i > curves.start + 1) {
      const step = curves.drag[i]! - curves.drag[i - 1]!;
      drag += ((2 * step * noise.speed_m_s) / v) ** 2;
    }
    if (dt > longGap) gapBound += 0.02 * g * (dt - longGap);
  }
  for (const burn of flight.burns) {
    if (burn.endIndex > curves.end || mass === null) continue;
    const isp = burn.segments[0]?.isp_s ?? 0;
    for (const m of [burn.startMass_kg, burn.endMass_kg])
      if (m !== null) ideal += ((9.80665 * isp * noise.mass_kg) / m) ** 2 / END_SAMPLES;
  }
  const ends = noise.speed_m_s * Math.sqrt(2 / END_SAMPLES);
  const at = (curve: Float64Array | null): number =>
    curve === null ? 0 : quadratureError(curve, time, curves);
  return {
    ideal: Math.sqrt(ideal),
    backPressure: Math.hypot(at(curves.backPressure), gapBound),
    steering: Math.hypot(Math.sqrt(steering), at(curves.steering), gapBound),
    drag: Math.hypot(Math.sqrt(drag), at(curves.drag), gapBound),
    gravity: Math.hypot(Math.sqrt(gravity), at(curves.gravity), gapBound),
    frame: at(curves.frame),
    holdDown: 0,
    speedGained: ends,
  };
}

/** Angle between thrust and path in the vertical plane, rad; what turns pitch noise into steering noise. */
function angleOff(flight: Flight, i: number): number {
  return (flight.pitch?.[i] ?? 0) - flight.flightPathAngle[i]!;
}

/** The trapezoid rule's error, −Σ dt³/12·f'', with f'' from the mean rates of three neighbouring gaps. */
function quadratureError(curve: Float64Array, time: Float64Array, curves: LossCurves): number {
  let sum = 0;
  for (let i = curves.start + 3; i <= curves.end; i++) {
    const a = time[i - 2]! - time[i - 3]!;
    const b = time[i - 1]! - time[i - 2]!;
    const c = time[i]! - time[i - 1]!;
    if (a < 1e-5 || b < 1e-5 || c < 1e-5) continue;
    const ra = (curve[i - 2]! - curve[i - 3]!) / a;
    const rb = (curve[i - 1]! - curve[i - 2]!) / b;
    const rc = (curve[i]! - curve[i - 1]!) / c;
    const bend = (rc - rb) / ((b + c) / 2) - (rb - ra) / ((a + b) / 2);
    const miss = (b * b * bend) / 12;
    if (Number.isFinite(miss)) sum += miss;
  }
  return Math.abs(sum);
}
