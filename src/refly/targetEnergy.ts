import type { Target } from '../mission/types.ts';
import type { World } from '../world/types.ts';
import type { Until } from './flightProgram.ts';

/** Specific orbital energy that the target asks for, J/kg; null for a peak altitude or a landing. */
export function targetEnergy_J_kg(world: World, target: Target): number | null {
  if (target.kind === 'escape') return target.c3_m2_s2 / 2;
  if (target.kind !== 'orbit') return null;
  const sum = 2 * world.radius_m + target.apoapsisAltitude_m + target.periapsisAltitude_m;
  return -world.mu_m3_s2 / sum;
}

/** A burn that ends when its orbit has the target's energy, else when the tank is empty. */
export function untilTargetEnergy(world: World, target: Target): Until {
  const energy = targetEnergy_J_kg(world, target);
  if (energy === null) return { kind: 'empty' };
  return {
    kind: 'condition',
    value: (s) => s.inertialSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / s.radius_m - energy,
    direction: 1,
  };
}
