import type { World } from '../world/types.ts';
import type { Program } from './controls.ts';
import type { FlightState } from './flightState.ts';

/** How the thrust axis is led after the kick. */
export interface Steering {
  /** Tangent of the pitch at `reference_s`. */
  readonly tangent: number;
  /** Its fall per second. */
  readonly fall_per_s: number;
  /** From lift-off. */
  readonly reference_s: number;
}

/**
 * Air is called thin where its pressure on a body at the world's surface circular speed, ½ρμ/R, is under this.
 * On the way up the vehicle is slower there by half and more, so that what it feels is a few hundred pascals.
 */
const THIN_AIR_PA = 2000;
/** Angle of attack, rad, given free when the air is half as dense as thin air; it grows with the square. */
const FREED_RAD = 0.1;
/** Where the dynamic pressure is under this, an angle-of-attack limit is eased in inverse proportion. */
export const DENSE_AIR_PA = 2000;

/**
 * Gravity turn in dense air, tan θ = a − b·t (Lawden 1963) in thin air and in space, and a smooth passage between
 * the two: the angle of attack is held under an allowance that is zero in dense air and opens with altitude.
 */
export function steered(world: World, steering: Steering): Program {
  const { tangent, fall_per_s, reference_s } = steering;
  const wanted = (s: FlightState) => Math.atan(tangent - fall_per_s * (s.time_s - reference_s));
  if (world.atmosphere === null) return { at: wanted };
  const halfSquare = (0.5 * world.mu_m3_s2) / world.radius_m;
  return {
    at: (s) => {
      const felt = s.density_kg_m3 * halfSquare;
      if (felt >= THIN_AIR_PA) return s.flightPathAngle_rad;
      const away = wanted(s) - s.flightPathAngle_rad;
      if (felt === 0) return s.flightPathAngle_rad + away;
      const allowed = FREED_RAD * (THIN_AIR_PA / felt - 1) ** 2;
      return s.flightPathAngle_rad + softlyLimited(away, allowed);
    },
  };
}

/** Keeps a pitch within an angle of the path wherever the air is dense; null = no limit. */
export function withinAngleOfAttack(pitch: Program, limit_rad: number | null): Program {
  if (limit_rad === null) return pitch;
  return {
    ...pitch,
    at: (s) => {
      const allowed = limit_rad * Math.max(1, DENSE_AIR_PA / Math.max(s.dynamicPressure_Pa, 1e-3));
      const away = pitch.at(s) - s.flightPathAngle_rad;
      return s.flightPathAngle_rad + Math.min(allowed, Math.max(-allowed, away));
    },
  };
}

/** x while small against the limit, never beyond it. */
function softlyLimited(x: number, limit: number): number {
  return limit > 0 ? limit * Math.tanh(x / limit) : 0;
}
