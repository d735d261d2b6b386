import { comingDownIndex } from '../flight/comingDown.ts';
import type { Burn, Flight } from '../flight/types.ts';
import { orbitFromPlanarState, type PlanarOrbit } from '../orbit/planar.ts';

/** Thrust-free time after a cutoff that makes it the end of the ascent. */
const QUIET_AFTER_S = 60;

/** Where the ascent's books are opened and closed. */
export interface AscentSpan {
  /** Axis index of the first ignition, or of the log's first point in flight. */
  readonly start: number;
  /** Axis index of the ascent's last cutoff, or of the last point where the log ends under thrust. */
  readonly end: number;
  /** The burn that ends there; null where no burn was found. */
  readonly burn: Burn | null;
  readonly isCutoff: boolean;
  /** Index after which the vehicle is coming down and burns no longer belong to the ascent. */
  readonly comingDown: number;
}

/** The orbit that the inertial state at an axis point belongs to. */
export function orbitAt(flight: Flight, i: number): PlanarOrbit {
  return orbitFromPlanarState(
    flight.mission.world.mu_m3_s2,
    flight.radius[i]!,
    flight.verticalSpeed[i]!,
    flight.track.inertialHorizontalSpeed[i]!,
  );
}

/**
 * The ascent ends at the first cutoff that leaves periapsis at or above the orbit floor with no thrust for 60 s
 * after it, else at the last cutoff before the vehicle comes down (METHODS §2). A burn that takes energy out
 * (a braking burn) is not of the ascent.
 */
export function ascentSpan(flight: Flight): AscentSpan {
  const { burns, mission } = flight;
  const comingDown = comingDownIndex(flight);
  const start = burns[0]?.startIndex ?? flight.liftOffIndex;
  const floor = mission.world.radius_m + mission.world.orbitFloor_m;
  let last: Burn | null = null;
  for (let k = 0; k < burns.length; k++) {
    const burn = burns[k]!;
    if (burn.startIndex > comingDown || (last !== null && isBraking(flight, burn))) break;
    last = burn;
    const pause = (burns[k + 1]?.start_s ?? Number.POSITIVE_INFINITY) - burn.end_s;
    const orbit = orbitAt(flight, burn.endIndex);
    if (!burn.endsAfterLog && pause >= QUIET_AFTER_S && orbit.periapsisRadius_m >= floor) break;
  }
  if (last === null)
    return { start, end: Math.max(start, unpoweredEnd(flight)), burn: null, isCutoff: false, comingDown };
  return { start, end: last.endIndex, burn: last, isCutoff: !last.endsAfterLog, comingDown };
}

/** True for a burn that takes energy out of the orbit. */
export function isBraking(flight: Flight, burn: Burn): boolean {
  return orbitAt(flight, burn.endIndex).energy_J_kg < orbitAt(flight, burn.startIndex).energy_J_kg;
}

/** Without burns: the point of greatest energy, where thrust must have ended. */
function unpoweredEnd(flight: Flight): number {
  let best = flight.liftOffIndex;
  let most = Number.NEGATIVE_INFINITY;
  for (let i = flight.liftOffIndex; i < flight.time.length; i++) {
    const energy = orbitAt(flight, i).energy_J_kg;
    if (energy > most) {
      most = energy;
      best = i;
    }
  }
  return best;
}
