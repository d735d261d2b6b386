import type { Dop853 } from './dop853.ts';

/** A function of time and state whose passage through zero marks an event. */
export interface EventFunction {
  readonly value: (t: number, y: Float64Array) => number;
  /** 1 = only rising through zero, −1 = only falling, 0 = both. */
  readonly direction: -1 | 0 | 1;
}

/**
 * True where a function that had the value `before` at a step's start and `after` at its end passed zero in the
 * direction asked for. A start exactly at zero counts, so that a body that rests on a surface and sinks is seen.
 */
export function crossed(before: number, after: number, direction: -1 | 0 | 1): boolean {
  const rising = before <= 0 && after > 0;
  const falling = before >= 0 && after < 0;
  return direction === 0 ? rising || falling : direction === 1 ? rising : falling;
}

/**
 * Time within the integrator's last step at which `value` passes zero, to the last digits of the time, by
 * bracketing with the Illinois form of regula falsi (Dowell & Jarratt 1971) on the dense output. `scratch` is
 * left with the state at the time returned, on the far side of zero or on it.
 */
export function locateEvent(
  solver: Dop853,
  value: EventFunction['value'],
  before: number,
  after: number,
  scratch: Float64Array,
): number {
  let a = solver.previousTime;
  let b = solver.time;
  let fa = before;
  let fb = after;
  if (fa === 0) {
    solver.at(a, scratch);
    return a;
  }
  const finest = 4 * Number.EPSILON * Math.max(Math.abs(a), Math.abs(b));
  let kept = 0;
  for (let round = 0; round < 100 && Math.abs(b - a) > finest && fb !== 0; round++) {
    let t = b - (fb * (b - a)) / (fb - fa);
    // Halve the bracket now and then, and whenever the secant leaves it.
    if (!((t - a) * (t - b) < 0) || round % 8 === 7) t = 0.5 * (a + b);
    if (t === a || t === b) break;
    const f = value(t, solver.at(t, scratch));
    if (f > 0 === fb > 0 || f === 0) {
      b = t;
      fb = f;
      // The same end kept twice: halve its value, so that the bracket shrinks from both sides.
      if (kept === 1) fa *= 0.5;
      kept = 1;
    } else {
      a = t;
      fa = f;
      if (kept === -1) fb *= 0.5;
      kept = -1;
    }
  }
  solver.at(b, scratch);
  return b;
}
