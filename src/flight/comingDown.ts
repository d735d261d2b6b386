import { peakAltitudeIndex } from './peakAltitude.ts';
import type { Flight } from './types.ts';

/**
 * Axis index of the last point above the orbit floor, or above nine tenths of the peak of a flight that stays
 * below it: what comes after is the way down. The last index where the log ends up there.
 */
export function comingDownIndex(flight: Flight): number {
  const peak = flight.altitude[peakAltitudeIndex(flight)]!;
  const level = Math.min(flight.mission.world.orbitFloor_m, 0.9 * peak);
  let i = flight.time.length - 1;
  while (i > 0 && flight.altitude[i]! < level) i--;
  return i;
}
