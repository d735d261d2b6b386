import type { Flight } from '../types.ts';
import { airDeceleration } from './airDeceleration.ts';
import { type DragPerMass, dragPerMass } from './dragPerMass.ts';

/** A peak, and when and where. */
export interface Peak {
  readonly value: number;
  readonly time_s: number;
  readonly altitude_m: number;
  readonly speed_m_s: number;
}

/** Entry into the air as the path shows it. */
export interface Entry {
  /** Axis points: first in the air, last before parachute or ground. */
  readonly from: number;
  readonly to: number;
  readonly speed_m_s: number;
  /** Of the path under the horizontal, rad. */
  readonly angle_rad: number;
  readonly deceleration: Peak;
  readonly decelerationSigma_m_s2: number;
  readonly dynamicPressure: Peak;
  /** Peak of √ρ·V³, and its integral over time. */
  readonly heating: Peak;
  readonly heatingIntegral: number;
  readonly drag: DragPerMass | null;
}

/** The entry between two axis points; null where the air is never felt (no air, or a few samples only). */
export function entryBetween(flight: Flight, from: number, to: number): Entry | null {
  if (flight.mission.world.atmosphere === null || to - from < 5) return null;
  const { time, altitude, speed, verticalSpeed, dynamicPressure, density } = flight;
  const air = airDeceleration(flight, from);
  const at = (value: number, i: number): Peak => ({
    value,
    time_s: time[i]!,
    altitude_m: altitude[i]!,
    speed_m_s: speed[i]!,
  });
  let most = -1;
  let press = from;
  let heat = from;
  let integral = 0;
  const flux = (i: number): number => Math.sqrt(density[i]!) * speed[i]! ** 3;
  for (let i = from; i <= to; i++) {
    const a = air.deceleration[i]!;
    // An edge of the fit tells less than its middle: the last two points are left out.
    if (Number.isFinite(a) && i <= to - 2 && (most === -1 || a > air.deceleration[most]!)) most = i;
    if (dynamicPressure[i]! > dynamicPressure[press]!) press = i;
    if (flux(i) > flux(heat)) heat = i;
    if (i < to) integral += ((flux(i) + flux(i + 1)) / 2) * (time[i + 1]! - time[i]!);
  }
  if (most === -1 || !(air.deceleration[most]! > 3 * air.sigma_m_s2)) return null;
  return {
    from,
    to,
    speed_m_s: speed[from]!,
    angle_rad: Math.asin(Math.max(-1, Math.min(1, -verticalSpeed[from]! / Math.max(1, speed[from]!)))),
    deceleration: at(air.deceleration[most]!, most),
    decelerationSigma_m_s2: air.sigma_m_s2,
    dynamicPressure: at(dynamicPressure[press]!, press),
    heating: at(flux(heat), heat),
    heatingIntegral: integral,
    drag: dragPerMass(flight, ...longestFall(flight, from, to)),
  };
}

/** The unpowered stretch between two axis points in which the air presses most, in pascal-seconds. */
function longestFall(flight: Flight, from: number, to: number): readonly [number, number] {
  const { time, dynamicPressure, gaps } = flight;
  let best: readonly [number, number] = [from, from];
  let most = -1;
  let start = from;
  let push = 0;
  for (let i = from; i <= to; i++) {
    const lit = i < to && gaps.burn[i] !== -1;
    if (i === to || lit) {
      if (push > most) {
        most = push;
        best = [start, i];
      }
      start = i + 1;
      push = 0;
    } else push += ((dynamicPressure[i]! + dynamicPressure[i + 1]!) / 2) * (time[i + 1]! - time[i]!);
  }
  return best;
}
