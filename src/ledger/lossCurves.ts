import { alongPath } from '../flight/alongPath.ts';
import type { Flight } from '../flight/types.ts';
import { dragAcceleration } from './dragAcceleration.ts';

/**
 * The ledger's entries as curves: each the running integral of METHODS §2 from the start point, m/s, on the
 * flight's axis. An entry that cannot be had is null.
 */
export interface LossCurves {
  readonly start: number;
  readonly end: number;
  readonly ideal: Float64Array | null;
  readonly backPressure: Float64Array | null;
  readonly steering: Float64Array | null;
  readonly drag: Float64Array | null;
  readonly gravity: Float64Array;
  /** Null in the inertial frame, which has none. */
  readonly frame: Float64Array | null;
  readonly holdDown: Float64Array | null;
  /** The frame's speed at each point, not a running integral. */
  readonly speed: Float64Array;
}

export type Frame = 'ground' | 'inertial';

/** Integrates every entry from axis point `start` to `end` by the trapezoid rule in the given frame. */
export function lossCurves(flight: Flight, start: number, end: number, frame: Frame): LossCurves {
  const { time, gaps, pitch } = flight;
  const n = time.length;
  const air = dragAcceleration(flight);
  const projections = projectionsOf(flight, frame);
  const make = (): Float64Array => new Float64Array(n).fill(Number.NaN);
  const curves = {
    ideal: gaps.known ? make() : null,
    backPressure: gaps.known && gaps.backKnown ? make() : null,
    steering: gaps.known && pitch !== null ? make() : null,
    drag: air === null ? null : make(),
    gravity: make(),
    frame: frame === 'ground' ? make() : null,
    holdDown: gaps.known ? make() : null,
  };
  // Zero-mean errors ε of the pitch make 1 − cos(α + ε) too large by ε²/2 on the mean (METHODS §3).
  const pitchBias = flight.noise.pitch_rad ** 2 / 2;
  let ideal = 0;
  let back = 0;
  let steering = 0;
  let drag = 0;
  let gravity = 0;
  let turning = 0;
  let held = 0;
  const { along, pull, push, slip, spin } = projections;
  for (let i = start; i <= end; i++) {
    if (i > start) {
      const k = i - 1;
      const dt = time[i]! - time[k]!;
      const moving = k >= flight.liftOffIndex;
      ideal += gaps.vacuum[k]!;
      if (!moving) held += gaps.vacuum[k]!;
      else {
        back += gaps.back[k]!;
        const thrust = gaps.vacuum[k]! - gaps.back[k]!;
        if (thrust !== 0) steering += thrust * (1 - (push[k]! + push[i]!) / 2 - pitchBias);
        if (air !== null) drag += ((air[k]! * slip[k]! + air[i]! * slip[i]!) / 2) * dt;
        gravity += ((pull[k]! + pull[i]!) / 2) * dt;
        turning -= ((spin[k]! + spin[i]!) / 2) * dt;
      }
    }
    if (curves.ideal) curves.ideal[i] = ideal;
    if (curves.backPressure) curves.backPressure[i] = back;
    if (curves.steering) curves.steering[i] = steering;
    if (curves.drag) curves.drag[i] = drag;
    curves.gravity[i] = gravity;
    if (curves.frame) curves.frame[i] = turning;
    if (curves.holdDown) curves.holdDown[i] = held;
  }
  return { start, end, ...curves, speed: along };
}

/** What the frame's velocity sees of each force; arrays on the flight's axis. */
export interface Projections {
  /** Speed in the frame. */
  readonly along: Float64Array;
  /** Gravity against the velocity, m/s². */
  readonly pull: Float64Array;
  /** Cosine between thrust axis and velocity. */
  readonly push: Float64Array;
  /** Cosine between the ground-relative and the frame's velocity. */
  readonly slip: Float64Array;
  /** Centrifugal acceleration along the velocity, m/s². */
  readonly spin: Float64Array;
}

/** Projects gravity, thrust, drag and the turning ground on the frame's velocity. */
export function projectionsOf(flight: Flight, frame: Frame): Projections {
  const { track, pitch, radius, speed, verticalSpeed, horizontalSpeed, mission } = flight;
  const n = speed.length;
  if (frame === 'ground') {
    const along = alongPath(mission.world, { ...flight, ...track });
    return { along: speed, ...along, slip: new Float64Array(n).fill(1) };
  }
  const out: Projections = {
    along: track.inertialSpeed,
    pull: new Float64Array(n),
    push: new Float64Array(n),
    slip: new Float64Array(n).fill(1),
    spin: new Float64Array(n),
  };
  const { mu_m3_s2 } = mission.world;
  for (let i = 0; i < n; i++) {
    const r = radius[i]!;
    const g = mu_m3_s2 / (r * r);
    const course = track.course[i]!;
    const theta = pitch === null ? 0 : pitch[i]!;
    const beta = track.heading[i]!;
    const v = speed[i]!;
    const V = track.inertialSpeed[i]!;
    const east = track.inertialEast[i]!;
    const north = track.inertialNorth[i]!;
    const up = verticalSpeed[i]!;
    if (V === 0) {
      out.pull[i] = g;
      out.push[i] = 1;
      continue;
    }
    out.pull[i] = (g * up) / V;
    out.push[i] =
      (Math.cos(theta) * (Math.sin(beta) * east + Math.cos(beta) * north) + Math.sin(theta) * up) / V;
    const across = horizontalSpeed[i]!;
    out.slip[i] =
      v > 0 ? (across * (Math.sin(course) * east + Math.cos(course) * north) + up * up) / (v * V) : 1;
  }
  return out;
}
