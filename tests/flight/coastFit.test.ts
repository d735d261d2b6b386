import { expect, test } from 'vitest';
import { coastAltitude, coastSpeeds } from '../../src/flight/coastFit.ts';
import { EARTH } from '../../src/world/bodies.ts';
import { normalNumbers } from '../noise.ts';

const time = Float64Array.from({ length: 200 }, (_, i) => i * 0.2);
const equator = new Float64Array(200);
const radius0 = EARTH.radius_m + 200000;
const still = { ...EARTH, spin_rad_s: 0 };
/** A coast that climbs at some 100 m/s: speed by the energy integral. */
const radius = time.map((x) => radius0 + 100 * x - 0.4 * x * x);
const speedAt = (r: number): number => Math.sqrt(7700 ** 2 + 2 * still.mu_m3_s2 * (1 / r - 1 / radius0));

test('energy kept over the coast gives the speed at its start from all samples', () => {
  const next = normalNumbers(11);
  const y = radius.map((r) => speedAt(r) + next());
  const found = coastSpeeds(still, equator, time, radius, 0, 199, { t: time, y }, 1)!;
  // 1 m/s over √199 samples.
  expect(Math.abs(found.speeds[0]! - 7700)).toBeLessThan(0.2);
  expect(found.speeds[150]! - found.speeds[0]!).toBeCloseTo(speedAt(radius[150]!) - 7700, 3);
});

test('a display that lags is not taken for a coast', () => {
  const y = radius.map((r, i) => speedAt(r) - 30 * Math.exp(-time[i]! / 10));
  expect(coastSpeeds(still, equator, time, radius, 0, 199, { t: time, y }, 1)).toBeNull();
});

/** So large a world that a fall of 0.8 m/s² stays one. */
const even = { ...still, radius_m: 1e11, mu_m3_s2: 0.8e22 };

test('altitude and rate of a parabola', () => {
  const y = time.map((x) => 200000 + 100 * x - 0.4 * x * x);
  const found = coastAltitude(even, time, 0, 199, { t: time, y })!;
  expect(found.altitude[0]!).toBeCloseTo(200000, 4);
  expect(found.rate[0]!).toBeCloseTo(100, 6);
  expect(found.rate[100]!).toBeCloseTo(84, 6);
});

test('a coast toward the pole: the ground turns slower under it, and the speed over the ground changes by that', () => {
  // A circular polar orbit at 200 km from 40° on, by its inertial speed and the ground's, ω·r·cos φ across it.
  const inertial = Math.sqrt(EARTH.mu_m3_s2 / radius0);
  const level = new Float64Array(200).fill(radius0);
  const latitude = time.map((x) => (40 * Math.PI) / 180 + (inertial / radius0) * x);
  const y = latitude.map((phi) => Math.hypot(inertial, EARTH.spin_rad_s * radius0 * Math.cos(phi)));
  const found = coastSpeeds(EARTH, latitude, time, level, 0, 199, { t: time, y }, 1)!;
  // The speed falls by 0.7 m/s in 40 s: with one latitude for all its mean would stand 0.35 m/s off at the start.
  expect(y[0]! - y[199]!).toBeGreaterThan(0.6);
  expect(Math.abs(found.speeds[0]! - y[0]!)).toBeLessThan(1e-6);
  expect(Math.abs(found.speeds[199]! - y[199]!)).toBeLessThan(1e-6);
});

test('a steep coast: gravity falls off on the way up, and the parabola with it', () => {
  // Straight up at 2.5 km/s from 200 km above a world that stands still: ḧ = −μ/r², by small steps.
  const h = new Float64Array(200);
  let [r, w] = [radius0, 2500];
  const pull = (x: number): number => -still.mu_m3_s2 / (x * x);
  for (let i = 0; i < 200; i++) {
    h[i] = r - EARTH.radius_m;
    for (let k = 0; k < 200; k++) {
      const dt = 0.2 / 200;
      const middle = w + (pull(r) * dt) / 2;
      r += middle * dt;
      w = middle + (pull(r) * dt) / 2;
    }
  }
  const found = coastAltitude(still, time, 0, 199, { t: time, y: h })!;
  // A plain parabola misses the rate by 1.1 m/s at the start, ten times what 6 m of noise leave.
  expect(Math.abs(found.rate[0]! - 2500)).toBeLessThan(0.01);
  expect(Math.abs(found.altitude[0]! - 200000)).toBeLessThan(0.1);
});
