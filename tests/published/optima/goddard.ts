import { constrainedMinimum } from '../../../src/refly/constrainedMinimum.ts';
import { Dop853 } from '../../../src/refly/dop853.ts';
import { locateEvent } from '../../../src/refly/eventLocation.ts';

// COPS 3.0 (Dolan, Moré & Munson), problem "rocket": all in units of the pad's radius, gravity and mass.
const exhaustSpeed = 0.5;
const mostThrust = 3.5;
const emptyMass = 0.6;
const dragFactor = 310;
const dragFall = 500;

/** Thrust as a function of time and of height, speed and mass. */
type Thrust = (t: number, y: Float64Array) => number;

function drag(y: Float64Array): number {
  return dragFactor * y[1]! ** 2 * Math.exp(-dragFall * (y[0]! - 1));
}

/** An integrator of the rocket's height, speed and mass. */
function rocket() {
  let thrust: Thrust = () => 0;
  const solver = new Dop853(
    3,
    (t, y, rate) => {
      const force = thrust(t, y);
      rate[0] = y[1]!;
      rate[1] = (force - drag(y)) / y[2]! - 1 / y[0]! ** 2;
      rate[2] = -force / exhaustSpeed;
    },
    { relativeTolerance: 1e-11, absoluteTolerance: 1e-13, maxStep: 0.01 },
  );
  let y = Float64Array.of(1, 0, 1);
  let time = 0;
  const scratch = new Float64Array(3);
  return {
    start() {
      y = Float64Array.of(1, 0, 1);
      time = 0;
      solver.forgetStep();
    },
    /** Flies on to a time, or until a function passes zero; returns the state there. */
    fly(program: Thrust, until: number, event?: (y: Float64Array) => number): Float64Array {
      thrust = program;
      solver.restart(time, y);
      let before = event?.(y) ?? 0;
      while (solver.time < until) {
        if (!solver.advance(until)) throw new Error('no step');
        const after = event?.(solver.state) ?? 0;
        if (event !== undefined && before > 0 !== after > 0) {
          time = locateEvent(solver, (_, s) => event(s), before, after, scratch);
          y = scratch.slice();
          return y;
        }
        before = after;
      }
      time = solver.time;
      y = solver.state.slice();
      return y;
    },
    get time() {
      return time;
    },
  };
}

/**
 * Summit of the ascent that Pontryagin's principle gives: full thrust, the singular arc, coast. On the arc, with
 * the time free, D·(1 + v/c) = m·g (Tsien & Evans 1951), and the thrust is what stays on it.
 */
export function goddardByPrinciple(): number {
  const r = rocket();
  r.start();
  const off = (y: Float64Array) => drag(y) * (1 + y[1]! / exhaustSpeed) - y[2]! / y[0]! ** 2;
  r.fly(() => mostThrust, 1, off);
  // d/dt of the condition, linear in the thrust: slope + gain·T = 0.
  const singular: Thrust = (_, y) => {
    const [h = 1, v = 0, m = 1] = y;
    const d = drag(y);
    const dOfV = (2 * d) / v;
    const overV = dOfV * (1 + v / exhaustSpeed) + d / exhaustSpeed;
    const overH = -dragFall * d * (1 + v / exhaustSpeed) + (2 * m) / h ** 3;
    const drift = overH * v + overV * (-d / m - 1 / h ** 2);
    const gain = overV / m + 1 / (exhaustSpeed * h ** 2);
    return Math.min(mostThrust, Math.max(0, -drift / gain));
  };
  r.fly(singular, 1, (y) => y[2]! - emptyMass);
  return r.fly(
    () => 0,
    2,
    (y) => y[1]!,
  )[0]!;
}

/**
 * Summit by search alone: how long full thrust lasts, then a thrust of straight pieces, its nodes and its end, such
 * that the tank is empty.
 */
export function goddardBySearch(nodes: number): { summit: number; settled: boolean } {
  const r = rocket();
  const size = nodes + 2;
  const lower = new Float64Array(size).fill(0);
  const upper = new Float64Array(size).fill(mostThrust);
  lower.set([0.1, 0.2]);
  upper.set([1, 4]);
  const end = constrainedMinimum(
    {
      size,
      constraints: 1,
      lower,
      upper,
      evaluate: (x, c) => {
        r.start();
        const full = 0.05 * x[0]!;
        const span = 0.1 * x[1]!;
        r.fly(() => mostThrust, full);
        let y: Float64Array = new Float64Array(3);
        for (let k = 0; k + 1 < nodes; k++) {
          const from = full + (span * k) / (nodes - 1);
          const to = full + (span * (k + 1)) / (nodes - 1);
          const a = x[2 + k]!;
          const b = x[3 + k]!;
          y = r.fly((t) => a + ((t - from) / (to - from)) * (b - a), to);
        }
        c[0] = 10 * (y[2]! - emptyMass);
        return (
          100 *
          (1 -
            r.fly(
              () => 0,
              2,
              (s) => s[1]!,
            )[0]!)
        );
      },
    },
    [0.4, 0.8, ...Array.from({ length: nodes }, () => 1.5)],
    { difference: 1e-4, rounds: 200, gain: 1e-8, met: 1e-8 },
  );
  return { summit: 1 - end.value / 100, settled: end.settled };
}
