import { expect, test } from 'vitest';
import { held } from '../../src/refly/controls.ts';
import { bareSize, fullSize, Motion, place } from '../../src/refly/motion.ts';
import { startState } from '../../src/refly/start.ts';
import { STANDARD_GRAVITY_M_S2 as g0 } from '../../src/units/standardGravity.ts';
import { EARTH } from '../../src/world/bodies.ts';
import { airTo, padStart, worldOf } from './rockets.ts';

function burning(motion: Motion, pitch: number, heading: number): Motion {
  motion.controls = { throttle: held(0.5), pitch: held(pitch), heading: held(heading) };
  motion.lit = true;
  motion.thrustVacuum_N = 100000;
  motion.ispVacuum_s = 300;
  motion.exitArea_m2 = 0.2;
  return motion;
}

test('thrust, flow and weight of a rocket at rest: T = throttle·Tvac − p·Ae, ṁ = throttle·Tvac/(g0·Isp)', () => {
  const motion = burning(new Motion(worldOf(0, airTo(90e3))), Math.PI / 2, 0);
  const y = new Float64Array(fullSize);
  startState(motion.world, padStart(), y);
  y[place.mass] = 2000;
  const rate = new Float64Array(fullSize);
  motion.rate(0, y, rate);
  const thrust = 50000 - 80000 * 0.2;
  expect(rate[place.vx]).toBeCloseTo(thrust / 2000 - 4e13 / 9e12, 10);
  expect(rate[place.mass]).toBeCloseTo(-50000 / (g0 * 300), 10);
  expect(rate[place.backPressure]).toBeCloseTo((80000 * 0.2) / 2000, 10);
  expect(rate[place.steering]).toBeCloseTo(0, 12);
  expect(rate[place.gravity]).toBeCloseTo(4e13 / 9e12, 10);
});

test('the thrust axis: pitch above the horizontal, heading from north through east', () => {
  const motion = burning(new Motion(worldOf(0)), 0.3, 0.5);
  const y = new Float64Array(bareSize);
  startState(motion.world, padStart(), y);
  y[place.mass] = 1000;
  const rate = new Float64Array(bareSize);
  motion.rate(0, y, rate);
  // At the prime meridian on the equator: x up, y east, z north.
  expect(rate[3]! + 4e13 / 9e12).toBeCloseTo(50 * Math.sin(0.3), 10);
  expect(rate[4]).toBeCloseTo(50 * Math.cos(0.3) * Math.sin(0.5), 10);
  expect(rate[5]).toBeCloseTo(50 * Math.cos(0.3) * Math.cos(0.5), 10);
});

test('a pinned rocket turns with the ground, and only ideal and hold-down run', () => {
  const motion = burning(new Motion(worldOf(1e-4)), Math.PI / 2, 0);
  motion.pinned = true;
  const y = new Float64Array(fullSize);
  startState(motion.world, padStart(), y);
  y[place.mass] = 1000;
  const rate = new Float64Array(fullSize);
  motion.rate(0, y, rate);
  expect(rate[1]).toBeCloseTo(300, 9);
  expect(rate[3]).toBeCloseTo(-1e-8 * 3e6, 12);
  expect(rate[place.ideal]).toBeCloseTo(50, 12);
  expect(rate[place.holdDown]).toBe(rate[place.ideal]);
  expect(rate[place.gravity]).toBe(0);
  expect(motion.state.speed_m_s).toBeCloseTo(0, 9);
});

test('rotation of Earth at the equator: 465.1 m/s of inertial speed at rest on the ground', () => {
  const motion = new Motion(EARTH);
  const y = new Float64Array(fullSize);
  startState(EARTH, padStart(), y);
  y[place.mass] = 1;
  const s = motion.observe(0, y, new Float64Array(fullSize));
  expect(s.inertialSpeed_m_s).toBeCloseTo(465.1, 1);
  expect(s.altitude_m).toBeCloseTo(0, 6);
});

test('on an ellipsoid altitude counts from its surface at the latitude', () => {
  const ellipsoid = { equatorialRadius_m: 3e6, flattening: 0.01 };
  const world = { ...worldOf(0), ellipsoid };
  const motion = new Motion(world);
  const y = new Float64Array(bareSize);
  startState(world, { ...padStart(), latitude_rad: 1, altitude_m: 1234 }, y);
  y[place.mass] = 1;
  const s = motion.observe(0, y, new Float64Array(bareSize));
  expect(s.altitude_m).toBeCloseTo(1234, 6);
  expect(s.radius_m).toBeLessThan(3e6);
  expect(s.latitude_rad).toBeCloseTo(1, 12);
});
