import type { World } from '../world/types.ts';
import { place } from './motion.ts';

/** The ledger of METHODS §2 in one frame, m/s, exact to the integrator's tolerance. */
export interface CarriedLedger {
  readonly ideal: number;
  readonly backPressure: number;
  readonly steering: number;
  readonly drag: number;
  readonly gravity: number;
  /** 0 in the inertial frame. */
  readonly frame: number;
  readonly holdDown: number;
  readonly speedGained: number;
  /** Ideal less all the rest: the integrator's own error. */
  readonly unexplained: number;
}

/** Speed of a state vector relative to the rotating ground, m/s. */
export function groundSpeed_m_s(world: World, y: Float64Array): number {
  const spin = world.spin_rad_s;
  return Math.hypot(y[3]! + spin * y[1]!, y[4]! - spin * y[0]!, y[5]!);
}

/**
 * What the losses carried by the state (see `place`) say between two states of one flight.
 * @param from state vector at the start, e.g. of the ignition event
 * @param to state vector at the end, e.g. of the last cutoff event
 */
export function carriedLedger(
  world: World,
  from: Float64Array,
  to: Float64Array,
  frame: 'ground' | 'inertial',
): CarriedLedger {
  const sum = (i: number) => to[i]! - from[i]!;
  const ground = frame === 'ground';
  const speed = (y: Float64Array) => (ground ? groundSpeed_m_s(world, y) : Math.hypot(y[3]!, y[4]!, y[5]!));
  const ledger = {
    ideal: sum(place.ideal),
    backPressure: sum(place.backPressure),
    steering: sum(ground ? place.steering : place.inertialSteering),
    drag: sum(ground ? place.drag : place.inertialDrag),
    gravity: sum(ground ? place.gravity : place.inertialGravity),
    frame: ground ? sum(place.frame) : 0,
    holdDown: sum(place.holdDown),
    speedGained: speed(to) - speed(from),
  };
  const { ideal, ...spent } = ledger;
  return { ...ledger, unexplained: Object.values(spent).reduce((left, v) => left - v, ideal) };
}
