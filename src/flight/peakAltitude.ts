import type { Flight } from './types.ts';

/** Axis index of the highest point. */
export function peakAltitudeIndex(flight: Pick<Flight, 'altitude'>): number {
  let peak = 0;
  for (let i = 1; i < flight.altitude.length; i++) if (flight.altitude[i]! > flight.altitude[peak]!) peak = i;
  return peak;
}
