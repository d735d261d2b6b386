/** Vacuum thrust in N at rising times in s from a motor's ignition; straight between nodes, none outside. */
export type ThrustCurve = readonly (readonly [time_s: number, thrust_N: number])[];

/** Total impulse of a thrust curve, N s (trapezoids, exact for straight pieces). */
export function totalImpulse_N_s(curve: ThrustCurve): number {
  let sum = 0;
  for (let i = 1; i < curve.length; i++) {
    sum += 0.5 * (curve[i]![1] + curve[i - 1]![1]) * (curve[i]![0] - curve[i - 1]![0]);
  }
  return sum;
}

/** Thrust averaged over the whole curve, N. */
export function meanThrust_N(curve: ThrustCurve): number {
  const duration = (curve.at(-1)?.[0] ?? 0) - (curve[0]?.[0] ?? 0);
  return duration > 0 ? totalImpulse_N_s(curve) / duration : (curve[0]?.[1] ?? 0);
}

/** Greatest thrust of the curve, N. */
export function peakThrust_N(curve: ThrustCurve): number {
  return curve.reduce((most, [, thrust]) => Math.max(most, thrust), 0);
}
