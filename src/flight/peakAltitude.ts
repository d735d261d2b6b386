import type { Flight } from './types.ts';

/** Axis index of the highest point. */
export function peakAltitudeIndex(flight: Pick<Flight, 'altitude'>): number {
  let peak = 0;
  for (let i = 1; i < flight.altitude.length; i++) if (flight.altitude[i]! > flight.altitude[peak]!) peak = i;
  return peak;
}

/** True where the flight never was above the air of its world, or above the orbit floor where that is lower. */
export function staysInAir(flight: Flight): boolean {
  const { atmosphere, orbitFloor_m } = flight.mission.world;
  if (atmosphere === null) return false;
  return flight.altitude[peakAltitudeIndex(flight)]! < Math.min(atmosphere.top_m, orbitFloor_m);
}
