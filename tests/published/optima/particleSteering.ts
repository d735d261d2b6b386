import { constrainedMinimum } from '../../../src/refly/constrainedMinimum.ts';
import { Dop853 } from '../../../src/refly/dop853.ts';

/** A particle pushed by a force of fixed size and free direction, from rest in least time to y, v_x, v_y. */
const acceleration = 100;
const goal = { y: 5, vx: 45, vy: 0 };

/** Flies an angle program for a time; the state is x, y, v_x, v_y. */
function fly(angle: (t: number) => number, time: number, pieces: number): Float64Array {
  const solver = new Dop853(
    4,
    (t, y, rate) => {
      const u = angle(t);
      rate[0] = y[2]!;
      rate[1] = y[3]!;
      rate[2] = acceleration * Math.cos(u);
      rate[3] = acceleration * Math.sin(u);
    },
    { relativeTolerance: 1e-11, absoluteTolerance: 1e-12 },
  );
  let y: ArrayLike<number> = [0, 0, 0, 0];
  for (let k = 0; k < pieces; k++) {
    solver.restart((time * k) / pieces, y);
    const end = (time * (k + 1)) / pieces;
    while (solver.time < end) if (!solver.advance(end)) throw new Error('no step');
    y = solver.state.slice();
  }
  return Float64Array.from(y);
}

function misses(y: Float64Array, c: Float64Array): void {
  c[0] = (y[1]! - goal.y) / 5;
  c[1] = (y[2]! - goal.vx) / 50;
  c[2] = (y[3]! - goal.vy) / 50;
}

const difference = { difference: 1e-4, met: 1e-9, gain: 1e-9, rounds: 200 };

/** tan θ = a − b·t with the constants and the time that meet the goal. */
export function steeringByPrinciple(): { a: number; b: number; time: number; miss: number } {
  const end = constrainedMinimum(
    {
      size: 3,
      constraints: 3,
      lower: Float64Array.of(-5, -5, 0.2),
      upper: Float64Array.of(5, 5, 2),
      evaluate: (x, c) => {
        const [a = 0, b = 0, time = 1] = x;
        misses(
          fly((t) => Math.atan(a - 10 * b * t), time, 1),
          c,
        );
        return time;
      },
    },
    [1, 0.4, 0.6],
    difference,
  );
  return { a: end.x[0]!, b: 10 * end.x[1]!, time: end.x[2]!, miss: end.miss };
}

/** Least time by search alone, the angle made of straight pieces. */
export function steeringBySearch(pieces: number): { time: number; miss: number; settled: boolean } {
  const size = pieces + 2;
  const end = constrainedMinimum(
    {
      size,
      constraints: 3,
      lower: new Float64Array(size).fill(-1.6),
      upper: new Float64Array(size).fill(1.6),
      evaluate: (x, c) => {
        const time = x[size - 1]!;
        if (!(time > 0.1)) return Number.NaN;
        const angle = (t: number) => {
          const at = Math.min(Math.max((t / time) * pieces, 0), pieces);
          const k = Math.min(Math.floor(at), pieces - 1);
          return x[k]! + (at - k) * (x[k + 1]! - x[k]!);
        };
        misses(fly(angle, time, pieces), c);
        return time;
      },
    },
    [...Array.from({ length: pieces + 1 }, (_, k) => 0.8 - (1.6 * k) / pieces), 0.7],
    difference,
  );
  return { time: end.value, miss: end.miss, settled: end.settled };
}
