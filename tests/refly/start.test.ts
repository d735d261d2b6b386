import { expect, test } from 'vitest';
import { startState } from '../../src/refly/start.ts';
import { padStart, worldOf } from './rockets.ts';

test('a pad turns with its world: held down for a while, it is over the prime meridian at lift-off', () => {
  const world = worldOf(1e-4);
  const y = new Float64Array(6);
  startState(world, { ...padStart(), latitude_rad: 0.5 }, y);
  expect(Math.hypot(y[0]!, y[1]!, y[2]!)).toBeCloseTo(3e6, 6);
  expect(Array.from(y.slice(3))).toEqual([0, 1e-4 * 3e6 * Math.cos(0.5), 0]);
  startState(world, padStart(100), y);
  expect(Math.atan2(y[1]!, y[0]!)).toBeCloseTo(-0.01, 12);
});

test('a start in flight: due north at 30° up, on the equator', () => {
  const y = new Float64Array(6);
  startState(
    worldOf(0),
    {
      kind: 'flight',
      time_s: 7,
      latitude_rad: 0,
      longitude_rad: 0,
      altitude_m: 1000,
      speed_m_s: 200,
      flightPathAngle_rad: Math.PI / 6,
      course_rad: 0,
      stage: 0,
      stagePropellant_kg: 0,
      mass_kg: 1,
    },
    y,
  );
  [3001000, 0, 0, 100, 0, 200 * Math.cos(Math.PI / 6)].forEach((v, i) => {
    expect(y[i]).toBeCloseTo(v, 9);
  });
});
