import type { Flight } from './types.ts';

/** Samples that a smoothed state leans on where no coast follows. */
const STATE_SAMPLES = 6;

/** One-sigma errors of altitude, vertical speed and speed over the ground at one moment. */
export interface StateSigma {
  readonly altitude_m: number;
  readonly verticalSpeed_m_s: number;
  readonly speed_m_s: number;
}

/** How sure the state at axis point `i` is: by the coast behind it where it is a cutoff, else by a few samples. */
export function stateSigma(flight: Flight, i: number): StateSigma {
  const { noise } = flight;
  const told = flight.cutoffs.find((c) => c.index === i);
  const or = (x: number | undefined, otherwise: number): number =>
    x !== undefined && Number.isFinite(x) ? x : otherwise;
  return {
    altitude_m: or(told?.altitude_m, noise.altitude_m / Math.sqrt(STATE_SAMPLES)),
    verticalSpeed_m_s: or(told?.verticalSpeed_m_s, noise.verticalSpeed_m_s),
    speed_m_s: or(told?.speed_m_s, noise.speed_m_s / Math.sqrt(STATE_SAMPLES)),
  };
}
