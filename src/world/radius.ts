import type { World } from './types.ts';

/**
 * Distance from the world's centre, m, of a point at an altitude in m. A spherical world adds its radius; an
 * ellipsoid adds its own radius at that geocentric latitude (rad), which is how insertion tables count
 * altitude (Orloff, Apollo by the Numbers, NASA SP-2000-4029: a sphere would misplace an apogee by 17 km).
 */
export function radiusAt_m(world: World, altitude_m: number, geocentricLatitude_rad: number): number {
  const { ellipsoid } = world;
  if (ellipsoid === null) return world.radius_m + altitude_m;
  const a = ellipsoid.equatorialRadius_m;
  const b = a * (1 - ellipsoid.flattening);
  const across = b * Math.cos(geocentricLatitude_rad);
  const along = a * Math.sin(geocentricLatitude_rad);
  return (a * b) / Math.sqrt(across * across + along * along) + altitude_m;
}

/** Change of that distance with the latitude, m per rad; 0 on a sphere. */
export function radiusSlope_m(world: World, geocentricLatitude_rad: number): number {
  const { ellipsoid } = world;
  if (ellipsoid === null) return 0;
  const a = ellipsoid.equatorialRadius_m;
  const b = a * (1 - ellipsoid.flattening);
  const across = b * Math.cos(geocentricLatitude_rad);
  const along = a * Math.sin(geocentricLatitude_rad);
  const square = across * across + along * along;
  return (-a * b * (a * a - b * b) * Math.sin(2 * geocentricLatitude_rad)) / (2 * square ** 1.5);
}
