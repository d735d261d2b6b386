import { radiusAt_m } from '../world/radius.ts';
import type { World } from '../world/types.ts';

/** Where and how a flight begins. Angles in rad; latitude geocentric. */
export type Start =
  | {
      readonly kind: 'pad';
      readonly latitude_rad: number;
      readonly longitude_rad: number;
      readonly altitude_m: number;
      /** Taken for the course until the path has one of its own: the launch azimuth. */
      readonly course_rad: number;
      /** First engine lit before it is let go; 0 = let go at ignition. */
      readonly holdDown_s: number;
    }
  | {
      readonly kind: 'flight';
      /** From lift-off. */
      readonly time_s: number;
      readonly latitude_rad: number;
      readonly longitude_rad: number;
      readonly altitude_m: number;
      /** Relative to the rotating ground. */
      readonly speed_m_s: number;
      readonly flightPathAngle_rad: number;
      readonly course_rad: number;
      /** 0-based stage, the propellant left in it and the mass of everything. */
      readonly stage: number;
      readonly stagePropellant_kg: number;
      readonly mass_kg: number;
      /** Altitude of the ground that it may come down to; 0 where it is not given. */
      readonly ground_m?: number;
    };

/**
 * Writes inertial position and velocity of a start into the first six places of `y`. The inertial axes are
 * those of the rotating frame at time zero.
 */
export function startState(world: World, start: Start, y: Float64Array): void {
  const time = start.kind === 'pad' ? -start.holdDown_s : start.time_s;
  const longitude = start.longitude_rad + world.spin_rad_s * time;
  const cosLat = Math.cos(start.latitude_rad);
  const sinLat = Math.sin(start.latitude_rad);
  const cosLon = Math.cos(longitude);
  const sinLon = Math.sin(longitude);
  const radius = radiusAt_m(world, start.altitude_m, start.latitude_rad);
  const speed = start.kind === 'pad' ? 0 : start.speed_m_s;
  const slope = start.kind === 'pad' ? Math.PI / 2 : start.flightPathAngle_rad;
  const up = speed * Math.sin(slope);
  const east = speed * Math.cos(slope) * Math.sin(start.course_rad) + world.spin_rad_s * radius * cosLat;
  const north = speed * Math.cos(slope) * Math.cos(start.course_rad);
  y[0] = radius * cosLat * cosLon;
  y[1] = radius * cosLat * sinLon;
  y[2] = radius * sinLat;
  y[3] = up * cosLat * cosLon - east * sinLon - north * sinLat * cosLon;
  y[4] = up * cosLat * sinLon + east * cosLon - north * sinLat * sinLon;
  y[5] = up * sinLat + north * cosLat;
}
