import type { Vehicle } from './types.ts';

/**
 * Propellant in all tanks that are still attached, kg: the mass less payload, dry stages, boosters and parts.
 * @param stage 0-based lowest stage still attached
 * @param gone names of booster groups and jettisons that have left
 * @returns null where the card lacks a mass
 */
export function propellantAboard_kg(
  vehicle: Vehicle,
  stage: number,
  mass_kg: number,
  gone: ReadonlySet<string>,
): number | null {
  let dry = vehicle.payload_kg;
  for (const s of vehicle.stages.slice(stage)) {
    if (dry === null || s.dryMass_kg === null) return null;
    dry += s.dryMass_kg;
    for (const b of s.boosters) if (!gone.has(b.name)) dry += b.count * b.dryMass_kg;
  }
  if (dry === null) return null;
  for (const j of vehicle.jettisons) if (!gone.has(j.name)) dry += j.mass_kg;
  return Math.max(0, mass_kg - dry);
}
