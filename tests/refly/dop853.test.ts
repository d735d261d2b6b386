import { Solver } from 'odex';
import { describe, expect, test } from 'vitest';
import { Dop853 } from '../../src/refly/dop853.ts';

/** Plane Kepler motion, μ = 1. */
function kepler(_t: number, y: ArrayLike<number>, rate: Float64Array | number[]): void {
  const r3 = Math.hypot(y[0] as number, y[1] as number) ** 3;
  rate[0] = y[2] as number;
  rate[1] = y[3] as number;
  rate[2] = -(y[0] as number) / r3;
  rate[3] = -(y[1] as number) / r3;
}

const energy = (y: ArrayLike<number>) =>
  ((y[2] as number) ** 2 + (y[3] as number) ** 2) / 2 - 1 / Math.hypot(y[0] as number, y[1] as number);

/** Periapsis of the orbit a = 1, e = 0.5; its period is 2π. */
const periapsis = [0.5, 0, 0, Math.sqrt(3)];
const tenRevolutions = 20 * Math.PI;

function fly(solver: Dop853, start: readonly number[], from: number, to: number): Float64Array {
  solver.restart(from, start);
  while (solver.time !== to) if (!solver.advance(to)) throw new Error('the step vanished');
  return solver.state;
}

describe('Dop853', () => {
  test('Kepler orbit of eccentricity 0.5 over ten revolutions: energy and return to the start', () => {
    const solver = new Dop853(4, kepler, { relativeTolerance: 1e-12, absoluteTolerance: 1e-12 });
    const end = fly(solver, periapsis, 0, tenRevolutions);
    // Measured: energy 2.0e-11, position 2.5e-9 (an independent DOP853, SciPy 1.17, the same).
    expect(Math.abs(energy(end) - energy(periapsis))).toBeLessThan(1e-10);
    expect(Math.hypot(end[0]! - 0.5, end[1]!)).toBeLessThan(1e-8);
  });

  test('agrees with an independent extrapolation integrator (odex)', () => {
    const other = new Solver(4);
    other.absoluteTolerance = 1e-12;
    other.relativeTolerance = 1e-12;
    const rate = [0, 0, 0, 0];
    const theirs = other.solve(
      (t, y) => {
        kepler(t, y, rate);
        return rate.slice();
      },
      0,
      [...periapsis],
      7.5,
    ).y;
    const ours = fly(
      new Dop853(4, kepler, { relativeTolerance: 1e-12, absoluteTolerance: 1e-12 }),
      periapsis,
      0,
      7.5,
    );
    for (let i = 0; i < 4; i++) expect(Math.abs(ours[i]! - theirs[i]!)).toBeLessThan(1e-10);
  });

  test('is of order 8: halving the step divides the error by some 2⁸', () => {
    const circle = [1, 0, 0, 1];
    const errors = [0.5, 0.25, 0.125].map((fixedStep) => {
      const end = fly(new Dop853(4, kepler, { fixedStep }), circle, 0, 4);
      return Math.hypot(end[0]! - Math.cos(4), end[1]! - Math.sin(4));
    });
    for (let i = 1; i < errors.length; i++) {
      const order = Math.log2(errors[i - 1]! / errors[i]!);
      expect(order).toBeGreaterThan(7.5);
      expect(order).toBeLessThan(9.5);
    }
  });

  test('dense output: meets both ends and is of order 7 between', () => {
    const into = new Float64Array(4);
    const worst = [0.5, 0.25].map((fixedStep) => {
      const solver = new Dop853(4, kepler, { fixedStep });
      solver.restart(0, [1, 0, 0, 1]);
      solver.advance(10);
      expect(solver.at(0, into)[0]).toBe(1);
      expect(Math.abs(solver.at(fixedStep * (1 - 1e-13), into)[1]! - solver.state[1]!)).toBeLessThan(1e-12);
      let most = 0;
      for (let i = 1; i < 20; i++) {
        const t = (fixedStep * i) / 20;
        solver.at(t, into);
        most = Math.max(most, Math.hypot(into[0]! - Math.cos(t), into[1]! - Math.sin(t)));
      }
      return most;
    });
    expect(Math.log2(worst[0]! / worst[1]!)).toBeGreaterThan(7.3);
  });

  test('runs backward over its own path', () => {
    const options = { relativeTolerance: 1e-12, absoluteTolerance: 1e-12 };
    const there = fly(new Dop853(4, kepler, options), periapsis, 0, 5);
    const back = fly(new Dop853(4, kepler, options), Array.from(there), 5, 0);
    for (let i = 0; i < 4; i++) expect(Math.abs(back[i]! - periapsis[i]!)).toBeLessThan(1e-10);
  });

  test('stops exactly at its limit, at a restart too, and gives up where the rate is not finite', () => {
    const thrust = { push: 1 };
    const solver = new Dop853(1, (_t, _y, rate) => {
      rate[0] = thrust.push;
    });
    solver.restart(0, [0]);
    while (solver.time < 1) solver.advance(1);
    expect(solver.time).toBe(1);
    expect(solver.state[0]).toBeCloseTo(1, 14);
    thrust.push = -1;
    solver.restart(1, solver.state);
    while (solver.time < 3) solver.advance(3);
    expect(solver.state[0]).toBeCloseTo(-1, 13);

    const broken = new Dop853(1, (t, _y, rate) => {
      rate[0] = t > 0.5 ? Number.NaN : 1;
    });
    broken.restart(0, [0]);
    let going = true;
    while (going && broken.time < 1) going = broken.advance(1);
    expect(going).toBe(false);
    expect(broken.time).toBeLessThanOrEqual(0.5);
  });
});
