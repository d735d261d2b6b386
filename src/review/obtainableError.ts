import { ispShare } from '../flight/identify/adopt.ts';
import type { Flight } from '../flight/types.ts';

/** Mean exhaust speed of the trade's engines, by which an error of the mass becomes one of delta-v, m/s. */
const EXHAUST_SPEED_M_S = 3000;

/** One-sigma error of the delta-v obtainable at axis point `i` from the mass as logged, m/s. */
export function massSigma(flight: Flight, i: number): number {
  return flight.mass === null ? 0 : (EXHAUST_SPEED_M_S * flight.noise.mass_kg) / flight.mass[i]!;
}

/** Largest share by which an adopted specific impulse may be off, of stage `stage` and those above it. */
export function ispShareFrom(flight: Flight, stage: number): number {
  const stages = flight.mission.vehicle?.stages ?? [];
  const above = stages.slice(stage).map((_, k) => ispShare(flight.identified, stage + k));
  return Math.max(ispShare(flight.identified, stage), ...above);
}

/** One-sigma error of the delta-v obtainable at axis point `i`, m/s: by the mass, and by the engines yet to burn. */
export function obtainableSigma(flight: Flight, i: number, obtainable_m_s: number): number {
  return Math.hypot(massSigma(flight, i), obtainable_m_s * ispShareFrom(flight, flight.stage[i]!));
}
