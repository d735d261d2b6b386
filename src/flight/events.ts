import { comingDownIndex } from './comingDown.ts';
import { peakAltitudeIndex } from './peakAltitude.ts';
import type { Flight } from './types.ts';
import { findParachutes } from './wayDown/parachutes.ts';

export type FlightEventName =
  | 'ignition'
  | 'lift-off'
  | 'pitch-over'
  | 'mach-1'
  | 'max-q'
  | 'throttle-down'
  | 'throttle-up'
  | 'cutoff'
  | 'separation'
  | 'booster-separation'
  | 'jettison'
  | 'apoapsis'
  | 'periapsis'
  | 'air-exit'
  | 'air-entry'
  | 'parachute-open'
  | 'parachute-full'
  | 'touchdown';

export interface FlightEvent {
  readonly name: FlightEventName;
  readonly time_s: number;
  /** Axis point at or just before the event. */
  readonly index: number;
  /** Stage or part concerned. */
  readonly subject: string | null;
}

/** Every event of the flight, in order of time. */
export function findEvents(flight: Flight): FlightEvent[] {
  const { time } = flight;
  const events: FlightEvent[] = [];
  const add = (name: FlightEventName, time_s: number, subject: string | null = null): void => {
    events.push({ name, time_s, index: indexAt(time, time_s), subject });
  };
  if (!flight.startsInFlight) add('lift-off', Math.max(0, time[0]!));
  for (const burn of flight.burns) {
    const name = stageName(flight, burn.stage);
    if (!burn.startsBeforeLog) add('ignition', burn.start_s, name);
    if (!burn.endsAfterLog) add('cutoff', burn.end_s, name);
    for (const step of throttleSteps(flight, burn.startIndex, burn.endIndex))
      add(step.name, step.time_s, name);
  }
  for (const step of flight.seenThrottleSteps) add(step.name, step.time_s);
  for (const drop of flight.drops) add(drop.kind, drop.time_s, drop.subject);
  const over = pitchOver(flight);
  if (over !== null) add('pitch-over', over);
  if (flight.mission.world.atmosphere !== null) airEvents(flight, add);
  turningPoints(flight, add);
  const canopy = findParachutes(flight, comingDownIndex(flight));
  if (canopy !== null && !canopy.openedBefore) add('parachute-open', canopy.open_s);
  if (canopy !== null && canopy.full_s !== null && !canopy.openedBefore) add('parachute-full', canopy.full_s);
  const down = touchdown(flight);
  if (down !== null) add('touchdown', down);
  return events.sort((a, b) => a.time_s - b.time_s || order(a.name) - order(b.name));
}

/** Events at one instant are told in the order in which they cause each other. */
function order(name: FlightEventName): number {
  return ['ignition', 'lift-off', 'cutoff', 'separation', 'booster-separation', 'jettison'].indexOf(name);
}

/** Name of a stage: the card's, else its number; of a log without masses the number of the burn. */
export function stageName(flight: Flight, stage: number): string {
  const named = flight.mission.vehicle?.stages[stage]?.name;
  // Without masses nothing tells one stage's burns from another's.
  return named ?? (flight.mass === null ? `burn ${stage + 1}` : `stage ${stage + 1}`);
}

/** Largest axis index whose time is not after `at`. */
export function indexAt(time: Float64Array, at: number): number {
  let low = 0;
  let high = time.length - 1;
  while (low < high) {
    const mid = (low + high + 1) >> 1;
    if (time[mid]! <= at) low = mid;
    else high = mid - 1;
  }
  return low;
}

/** Departure from the vertical that counts as pitching over. */
const PITCH_OVER_RAD = (1 * Math.PI) / 180;

/** First lasting departure of the thrust axis (or, without pitch, of the path) from the vertical. */
function pitchOver(flight: Flight): number | null {
  if (flight.startsInFlight) return null;
  const { time, pitch, flightPathAngle, speed, noise, burns } = flight;
  const angle = pitch ?? flightPathAngle;
  // Any path turns over at its top: without the thrust axis only a turn under the first thrust is the pilot's.
  const last = pitch === null ? (burns[0]?.endIndex ?? time.length) : time.length;
  const margin = pitch === null ? 2 * PITCH_OVER_RAD : Math.max(PITCH_OVER_RAD, 4 * noise.pitch_rad);
  for (let i = flight.liftOffIndex + 1; i < last; i++) {
    if (pitch === null && (speed[i]! < 20 || noise.verticalSpeed_m_s > 0.02 * speed[i]!)) continue;
    if (Math.PI / 2 - angle[i]! <= margin) continue;
    let lasting = true;
    for (let j = i; j < time.length && time[j]! - time[i]! < 2; j++)
      if (Math.PI / 2 - angle[j]! <= margin / 2) lasting = false;
    if (lasting) return time[i]!;
  }
  return null;
}

type Add = (name: FlightEventName, time_s: number, subject?: string | null) => void;

function airEvents(flight: Flight, add: Add): void {
  const { time, mach, dynamicPressure, altitude, verticalSpeed, mission } = flight;
  const n = time.length;
  for (let i = flight.liftOffIndex + 1; i < n; i++) {
    if (mach[i - 1]! < 1 && mach[i]! >= 1 && verticalSpeed[i]! > 0) {
      add('mach-1', between(time, mach, i, 1));
      break;
    }
  }
  const peak = peakAltitudeIndex(flight);
  let top = -1;
  for (let i = flight.liftOffIndex; i <= peak; i++) {
    if (top === -1 || dynamicPressure[i]! > dynamicPressure[top]!) top = i;
  }
  if (top > flight.liftOffIndex && top < peak && dynamicPressure[top]! > 0)
    add('max-q', vertexTime(time, dynamicPressure, top, flight.noise.altitude_m > 5 ? 10 : 2));
  const edge = Math.min(mission.world.atmosphere!.top_m, mission.world.orbitFloor_m);
  for (let i = 1; i < n; i++) {
    if (altitude[i - 1]! < edge && altitude[i]! >= edge) add('air-exit', between(time, altitude, i, edge));
    if (altitude[i - 1]! >= edge && altitude[i]! < edge) add('air-entry', between(time, altitude, i, edge));
  }
}

/** Time at which a channel crosses a level between points i−1 and i. */
function between(time: Float64Array, y: Float64Array, i: number, level: number): number {
  const share = (level - y[i - 1]!) / (y[i]! - y[i - 1]!);
  return time[i - 1]! + share * (time[i]! - time[i - 1]!);
}

/** Vertex of the parabola by least squares through ±`half_s` about a highest point. */
function vertexTime(time: Float64Array, y: Float64Array, top: number, half_s: number): number {
  let a = top;
  let b = top;
  while (a > 0 && (time[top]! - time[a]! < half_s || top - a < 2)) a--;
  while (b < time.length - 1 && (time[b]! - time[top]! < half_s || b - top < 2)) b++;
  let s0 = 0,
    s1 = 0,
    s2 = 0,
    s3 = 0,
    s4 = 0,
    y0 = 0,
    y1 = 0,
    y2 = 0;
  for (let i = a; i <= b; i++) {
    const x = time[i]! - time[top]!;
    const d = y[i]! - y[top]!;
    s0++;
    s1 += x;
    s2 += x * x;
    s3 += x ** 3;
    s4 += x ** 4;
    y0 += d;
    y1 += x * d;
    y2 += x * x * d;
  }
  // Cramer's rule for the normal equations of d = c0 + c1·x + c2·x².
  const det = s0 * (s2 * s4 - s3 * s3) - s1 * (s1 * s4 - s2 * s3) + s2 * (s1 * s3 - s2 * s2);
  const c1 = (s0 * (y1 * s4 - y2 * s3) - y0 * (s1 * s4 - s2 * s3) + s2 * (s1 * y2 - s2 * y1)) / det;
  const c2 = (s0 * (s2 * y2 - s3 * y1) - s1 * (s1 * y2 - s2 * y1) + y0 * (s1 * s3 - s2 * s2)) / det;
  const vertex = -c1 / (2 * c2);
  return c2 < 0 && Math.abs(vertex) <= time[b]! - time[a]! ? time[top]! + vertex : time[top]!;
}

/** Apoapsis and periapsis passages: lasting changes of sign of the vertical speed outside burns. */
function turningPoints(flight: Flight, add: Add): void {
  const { time, verticalSpeed, gaps, noise, altitude } = flight;
  const quiet = Math.max(0.2, 3 * noise.verticalSpeed_m_s);
  const ground = altitude[flight.liftOffIndex]!;
  // A hop on the pad turns too; the peak of a small rocket counts as well.
  const least = ground + Math.min(1000, 0.5 * (altitude.reduce((a, b) => Math.max(a, b)) - ground));
  let sign = 0;
  let turn = 0;
  for (let i = flight.liftOffIndex + 1; i < time.length; i++) {
    const v = verticalSpeed[i]!;
    const now = v > quiet ? 1 : v < -quiet ? -1 : 0;
    if (v * (verticalSpeed[i - 1] ?? v) <= 0) turn = i;
    if (now === 0 || now === sign) continue;
    if (sign !== 0 && turn > 0) {
      const powered = gaps.burn[Math.min(turn, gaps.burn.length - 1)] !== -1;
      const high = altitude[turn]! > least;
      if (!powered && high) add(sign === 1 ? 'apoapsis' : 'periapsis', between(time, verticalSpeed, turn, 0));
    }
    sign = now;
  }
}

/**
 * First time, after having flown, that the vehicle is at rest for good: near the ground or well under its peak, and
 * it does not come lower any more (a hover does).
 */
function touchdown(flight: Flight): number | null {
  const { time, altitude, speed, noise } = flight;
  const n = time.length;
  const peak = peakAltitudeIndex(flight);
  const ground = flight.startsInFlight ? flight.mission.site.altitude_m : altitude[flight.liftOffIndex]!;
  const still = Math.max(1, 5 * noise.speed_m_s);
  // Ground elsewhere may be higher or lower than at the pad; only a peak's own stillness must not count.
  const near = Math.max(50, 3 * noise.altitude_m, 0.3 * (altitude[peak]! - ground));
  const settled = Math.max(2, 4 * noise.altitude_m);
  const lowestAfter = new Float64Array(n);
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = n - 1; i > peak; i--) {
    if (altitude[i]! < lowest) lowest = altitude[i]!;
    lowestAfter[i] = lowest;
  }
  for (let i = peak + 1; i < n; i++) {
    if (speed[i]! > still || altitude[i]! - ground > near) continue;
    if (altitude[i]! - lowestAfter[i]! > settled) continue;
    let lasting = time[n - 1]! - time[i]! >= 0.5;
    for (let j = i; j < n && time[j]! - time[i]! < 2; j++) if (speed[j]! > still) lasting = false;
    if (lasting) return time[i]!;
  }
  return null;
}

/** Least lasting change of throttle that is an event. */
const THROTTLE_STEP = 0.05;

function throttleSteps(
  flight: Flight,
  from: number,
  to: number,
): { name: 'throttle-down' | 'throttle-up'; time_s: number }[] {
  const { time, throttle } = flight;
  if (throttle === null) return [];
  const out: { name: 'throttle-down' | 'throttle-up'; time_s: number }[] = [];
  let level = throttle[from + 1] ?? 0;
  let i = from + 1;
  while (i < to) {
    const change = throttle[i]! - level;
    if (Math.abs(change) >= THROTTLE_STEP) {
      const name = change < 0 ? 'throttle-down' : 'throttle-up';
      out.push({ name, time_s: time[i]! });
      // Follow the ramp to where it ends before looking for the next step.
      while (i + 1 < to && (throttle[i + 1]! - throttle[i]!) * change > 0) i++;
      level = throttle[i]!;
    }
    i++;
  }
  return out;
}
