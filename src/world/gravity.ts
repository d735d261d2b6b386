import type { World } from './types.ts';

/** Gravity of a sphere, m/s², at a distance in m from the world's centre (Newton): `μ/r²`. */
export function gravity_m_s2(world: World, radius_m: number): number {
  return world.mu_m3_s2 / (radius_m * radius_m);
}
