import { columnOf } from '../flight/identify/equation.ts';
import { factorSigma } from '../flight/identify/identifyVehicle.ts';
import type { Burn, Flight } from '../flight/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';

/** Samples that a smoothed end value leans on. */
export const END_SAMPLES = 6;

/** One sigma that gives a rounding error, even over half a step, its own 95 % interval. */
const UNIFORM_95 = 0.95 / 1.959964;

/** Variance of a burn's delta-v from the masses at its edges, which the logarithm hangs on, m²/s². */
export function edgeVariance(flight: Flight, burn: Burn): number {
  const { noise } = flight;
  const spread = noise.massStep_kg / Math.sqrt(12);
  const white = Math.sqrt(Math.max(0, noise.mass_kg ** 2 - spread ** 2) / END_SAMPLES);
  const sigma = Math.hypot(UNIFORM_95 * (noise.massStep_kg / 2), white);
  // A mass that card and throttle made leaves an edge anywhere between two rows.
  const made = flight.log.channels.mass === undefined ? flight.mass : null;
  const isp = burn.segments[0]?.isp_s ?? 0;
  const middle = (burn.startIndex + burn.endIndex) >> 1;
  const edges = [
    [burn.startMass_kg, Math.min(burn.startIndex + 2, middle)],
    [burn.endMass_kg, Math.max(burn.endIndex - 3, middle)],
  ] as const;
  let sum = 0;
  for (const [m, beside] of edges) {
    if (m === null) continue;
    const open = made === null ? sigma : UNIFORM_95 * (made[beside]! - made[beside + 1]!);
    sum += ((STANDARD_GRAVITY_M_S2 * isp * open) / m) ** 2;
  }
  return sum;
}

/**
 * One sigma of a burn's vacuum delta-v, m/s: of the masses at its edges, and of the identified specific impulse of
 * the engine that burnt longest in it.
 * @param deltaV_m_s the burn's vacuum delta-v
 */
export function burnSigma_m_s(flight: Flight, burn: Burn, deltaV_m_s: number): number {
  const { identified, burns } = flight;
  const edges = edgeVariance(flight, burn);
  if (identified === null || !identified.adopted) return Math.sqrt(edges);
  const { fit } = identified;
  const long = burn.segments.reduce((best, { start_s, end_s }, s) => {
    const { start_s: from, end_s: to } = burn.segments[best]!;
    return end_s - start_s > to - from ? s : best;
  }, 0);
  const engine = fit.engineOf[burns.indexOf(burn)]?.[long];
  if (engine === undefined) return Math.sqrt(edges);
  const column = columnOf.isp(engine);
  return Math.sqrt(
    edges + ((deltaV_m_s * factorSigma(fit, column)) / Math.max(1e-9, fit.factors[column]!)) ** 2,
  );
}
