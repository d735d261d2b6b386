import type { Flight } from '../flight/types.ts';
import { propellantAboard_kg } from '../mission/propellantAboard.ts';

/** Propellant aboard the whole vehicle at axis point `i`, kg; null where log or card do not tell it. */
export function propellantAt_kg(flight: Flight, i: number): number | null {
  const { vehicle } = flight.mission;
  if (vehicle === null || flight.mass === null || vehicle.stages.length === 0) return null;
  const gone = new Set<string>();
  for (const d of flight.drops)
    if (d.index < i && d.subject !== null && d.kind !== 'separation') gone.add(d.subject);
  const stage = Math.min(flight.stage[i]!, vehicle.stages.length - 1);
  return propellantAboard_kg(vehicle, stage, flight.mass[i]!, gone);
}
