import { obtainableDeltaV_m_s } from './obtainable.ts';
import type { Vehicle } from './types.ts';
import { liftOffMass_kg } from './vehicle.ts';

/** The whole vehicle's vacuum delta-v from lift-off, m/s; null where the card lacks what that needs. */
export function vehicleDeltaV_m_s(vehicle: Vehicle): number | null {
  const mass_kg = liftOffMass_kg(vehicle);
  if (mass_kg === null || vehicle.stages.length === 0) return null;
  return obtainableDeltaV_m_s(vehicle, {
    stage: 0,
    mass_kg,
    time_s: 0,
    gone: new Set(),
    dropTimes_s: new Map(),
  });
}
