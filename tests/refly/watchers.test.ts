import { expect, test } from 'vitest';
import { Dop853 } from '../../src/refly/dop853.ts';
import { bareSize, Motion, place } from '../../src/refly/motion.ts';
import { startState } from '../../src/refly/start.ts';
import { Watch } from '../../src/refly/watch.ts';
import { Watchers } from '../../src/refly/watchers.ts';
import { worldOf } from './rockets.ts';

/** A stone thrown straight up at 1000 m/s from a world without air that does not turn. */
function stone(watches: readonly Watch[]) {
  const world = worldOf(0);
  const motion = new Motion(world);
  const solver = new Dop853(bareSize, motion.rate, {
    relativeTolerance: 1e-10,
    absoluteTolerance: new Float64Array(bareSize).fill(1e-8),
    maxStep: 1000,
  });
  const y = new Float64Array(bareSize);
  startState(
    world,
    {
      kind: 'flight',
      time_s: 0,
      latitude_rad: 0,
      longitude_rad: 0,
      altitude_m: 0,
      speed_m_s: 1000,
      flightPathAngle_rad: Math.PI / 2,
      course_rad: 0,
      stage: 0,
      stagePropellant_kg: 0,
      mass_kg: 1,
    },
    y,
  );
  y[place.mass] = 1;
  solver.restart(0, y);
  return { watchers: new Watchers(watches, solver, motion, bareSize), solver, world, y };
}

test('the first passage ends the integration, however many lie in one step', () => {
  const at = (height_m: number) => new Watch((s) => s.altitude_m - height_m, 1);
  const [high, low, never] = [at(60_000), at(20_000), at(10_000)];
  for (const w of [high, low]) w.active = true;
  const { watchers, solver, world, y } = stone([high, low, never]);
  expect(watchers.integrate(1000, y, null)).toBe(low);
  expect(Math.hypot(y[0]!, y[1]!, y[2]!) - world.radius_m).toBeCloseTo(20_000, 3);
  // Vis viva.
  const { mu_m3_s2, radius_m } = world;
  const left = Math.sqrt(1e6 + 2 * mu_m3_s2 * (1 / (radius_m + 20_000) - 1 / radius_m));
  expect(Math.hypot(y[3]!, y[4]!, y[5]!)).toBeCloseTo(left, 6);
  solver.restart(watchers.time, y);
  low.active = false;
  expect(watchers.integrate(1000, y, null)).toBe(high);
  expect(Math.hypot(y[0]!, y[1]!, y[2]!) - world.radius_m).toBeCloseTo(60_000, 3);
});

test('without a passage it ends at the limit', () => {
  const { watchers, y } = stone([]);
  expect(watchers.integrate(50, y, null)).toBe('limit');
  expect(watchers.time).toBe(50);
});
