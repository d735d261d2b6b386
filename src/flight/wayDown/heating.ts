import type { World } from '../../world/types.ts';

/**
 * Sutton & Graves 1971 (NASA TR R-376): stagnation-point heat flux q = k·√(ρ/Rn)·V³ in W/m² with SI units.
 * The constant belongs to the gas of the world.
 */
const SUTTON_GRAVES_EARTH = 1.7415e-4;
const SUTTON_GRAVES_MARS = 1.9027e-4;

/** The world's constant, kg^½/m; null where its gas is not told. */
export function heatingConstant(world: World): number | null {
  if (world.atmosphere?.model === 'us-standard-1976') return SUTTON_GRAVES_EARTH;
  if (world.atmosphere?.model === 'mars-published') return SUTTON_GRAVES_MARS;
  return null;
}

/** Stagnation heat flux in W/m² at a density (kg/m³), speed (m/s) and nose radius (m). */
export function heatFlux_W_m2(
  constant: number,
  density_kg_m3: number,
  speed_m_s: number,
  noseRadius_m: number,
): number {
  return constant * Math.sqrt(density_kg_m3 / noseRadius_m) * speed_m_s ** 3;
}
