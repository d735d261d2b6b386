import { describe, expect, test } from 'vitest';
import { Dop853 } from '../../src/refly/dop853.ts';
import { crossed, locateEvent } from '../../src/refly/eventLocation.ts';

describe('locateEvent', () => {
  test('finds where a body thrown upward comes back (closed form 2v/g)', () => {
    const solver = new Dop853(2, (_t, y, rate) => {
      rate[0] = y[1]!;
      rate[1] = -9.8;
    });
    const height = (_t: number, y: Float64Array) => y[0]! - 5;
    solver.restart(0, [0, 20]);
    const scratch = new Float64Array(2);
    const found: number[] = [];
    while (solver.time !== 10) {
      const before = height(solver.time, solver.state);
      solver.advance(10);
      const after = height(solver.time, solver.state);
      if (crossed(before, after, 0)) {
        found.push(locateEvent(solver, height, before, after, scratch));
        expect(Math.abs(scratch[0]! - 5)).toBeLessThan(1e-12);
      }
    }
    const root = Math.sqrt(400 - 2 * 9.8 * 5);
    expect(found[0]).toBeCloseTo((20 - root) / 9.8, 12);
    expect(found[1]).toBeCloseTo((20 + root) / 9.8, 12);
  });

  test('finds the apsides of a Kepler orbit to the dense output’s accuracy', () => {
    const solver = new Dop853(
      4,
      (_t, y, rate) => {
        const r3 = Math.hypot(y[0]!, y[1]!) ** 3;
        rate[0] = y[2]!;
        rate[1] = y[3]!;
        rate[2] = -y[0]! / r3;
        rate[3] = -y[1]! / r3;
      },
      { relativeTolerance: 1e-12, absoluteTolerance: 1e-12 },
    );
    const radial = (_t: number, y: Float64Array) => y[0]! * y[2]! + y[1]! * y[3]!;
    const scratch = new Float64Array(4);
    solver.restart(0.1, [0.5, 0.1, 0, Math.sqrt(3)]);
    let before = radial(0, solver.state);
    const times: number[] = [];
    while (solver.time !== 30) {
      solver.advance(30);
      const after = radial(0, solver.state);
      if (crossed(before, after, -1)) times.push(locateEvent(solver, radial, before, after, scratch));
      before = after;
    }
    const r = Math.hypot(0.5, 0.1);
    const a = 1 / (2 / r - 3);
    expect(times.length).toBeGreaterThan(2);
    for (let i = 1; i < times.length; i++)
      expect(Math.abs(times[i]! - times[i - 1]! - 2 * Math.PI * a ** 1.5)).toBeLessThan(1e-9);
  });
});

describe('crossed', () => {
  test('honours the direction and counts a start at zero', () => {
    expect(crossed(-1, 1, 1)).toBe(true);
    expect(crossed(-1, 1, -1)).toBe(false);
    expect(crossed(1, -1, 0)).toBe(true);
    expect(crossed(0, -1, -1)).toBe(true);
    expect(crossed(1, 2, 0)).toBe(false);
  });
});
