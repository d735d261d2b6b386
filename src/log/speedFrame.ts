import { openingValue } from './opening.ts';

/** Against what a speed is measured, with the evidence in words. */
export interface SpeedFrame {
  readonly frame: 'ground' | 'inertial';
  readonly sure: boolean;
  readonly reason: string;
}

/** A vehicle on its pad shows less than this over the ground, m/s. */
const STILL_M_S = 15;
/** The slowest spin worth telling apart: inertial speed of the ground, m/s. */
const SPUN_M_S = 60;

/**
 * Tells from the log's beginning whether a speed is relative to the turning ground or inertial: on the pad the
 * one is nothing, the other the speed of the ground. Null where the log does not begin at rest at its lowest
 * altitude.
 */
export function speedFrame(
  time: Float64Array,
  altitude: Float64Array,
  speed: Float64Array,
): SpeedFrame | null {
  const n = Math.min(time.length, altitude.length, speed.length);
  if (n < 5) return null;
  const first = openingValue(time, speed);
  const start = openingValue(time, altitude);
  if (!Number.isFinite(first) || !Number.isFinite(start)) return null;
  if (first < STILL_M_S) {
    return {
      frame: 'ground',
      sure: true,
      reason: `it is ${first.toFixed(1)} m/s at the start, so it is relative to the ground`,
    };
  }
  // At rest: over the first second or so the altitude hardly moves although the speed would carry it far.
  let i = 1;
  while (i < n - 1 && time[i]! - time[0]! < 1) i++;
  const dt = time[i]! - time[0]!;
  const climbed = Math.abs(altitude[i]! - altitude[0]!);
  const gained = Math.abs(speed[i]! - first);
  const still = climbed < 0.25 * first * dt && gained < Math.max(3, 0.1 * first) && Math.abs(start) < 9000;
  if (!still || first < SPUN_M_S || first > 2000) return null;
  return {
    frame: 'inertial',
    sure: true,
    reason: `it is ${first.toFixed(0)} m/s at the start, where the altitude stands at ${start.toFixed(0)} m, so it is inertial`,
  };
}
