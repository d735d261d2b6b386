import type { World } from '../world/types.ts';
import type { Program } from './controls.ts';
import type { FlightState } from './flightState.ts';

/** How the thrust axis is led after the kick. */
export interface Steering {
  /** Angle of attack held in dense air, the nose above the path, rad. */
  readonly attack_rad: number;
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
/** Where the dynamic pressure is under this, an angle-of-attack limit is eased in inverse proportion, */
export const DENSE_AIR_PA = 2000;
/** by this at least, rad: without any angle of attack no kick would turn the path. */
const EASED_RAD = (5 * Math.PI) / 180;

/**
 * A held angle of attack in dense air (a gravity turn where it is zero), tan θ = a − b·t (Lawden 1963) in thin air
 * and in space, and a smooth passage between the two: what the pitch may differ from the held one is nothing in
 * dense air and opens with altitude.
 */
export function steered(world: World, steering: Steering): Program {
  const { attack_rad, tangent, fall_per_s, reference_s } = steering;
  const wanted = (s: FlightState) => Math.atan(tangent - fall_per_s * (s.time_s - reference_s));
  if (world.atmosphere === null) return { at: wanted };
  const halfSquare = (0.5 * world.mu_m3_s2) / world.radius_m;
  return {
    at: (s) => {
      const felt = s.density_kg_m3 * halfSquare;
      const held = s.flightPathAngle_rad + attack_rad;
      if (felt >= THIN_AIR_PA) return held;
      const away = wanted(s) - held;
      if (felt === 0) return held + away;
      const allowed = FREED_RAD * (THIN_AIR_PA / felt - 1) ** 2;
      return held + softlyLimited(away, allowed);
    },
  };
}

/** Keeps a pitch within an angle of the path wherever the air is dense; null = no limit. */
export function withinAngleOfAttack(pitch: Program, limit_rad: number | null): Program {
  if (limit_rad === null) return pitch;
  return {
    ...pitch,
    at: (s) => {
      const thin = Math.max(0, DENSE_AIR_PA / Math.max(s.dynamicPressure_Pa, 1e-3) - 1);
      const allowed = limit_rad + thin * Math.max(limit_rad, EASED_RAD);
      const away = pitch.at(s) - s.flightPathAngle_rad;
      return s.flightPathAngle_rad + Math.min(allowed, Math.max(-allowed, away));
    },
  };
}

/** x while small against the limit, never beyond it. */
function softlyLimited(x: number, limit: number): number {
  return limit > 0 ? limit * Math.tanh(x / limit) : 0;
}
