import { expect, test } from 'vitest';
import { coastAltitude, coastSpeeds } from '../../src/flight/coastFit.ts';
import { EARTH } from '../../src/world/bodies.ts';
import { normalNumbers } from '../noise.ts';

const time = Float64Array.from({ length: 200 }, (_, i) => i * 0.2);
const radius0 = EARTH.radius_m + 200000;
const still = { ...EARTH, spin_rad_s: 0 };
/** A coast that climbs at some 100 m/s: speed by the energy integral. */
const radius = time.map((x) => radius0 + 100 * x - 0.4 * x * x);
const speedAt = (r: number): number => Math.sqrt(7700 ** 2 + 2 * still.mu_m3_s2 * (1 / r - 1 / radius0));

test('energy kept over the coast gives the speed at its start from all samples', () => {
  const next = normalNumbers(11);
  const y = radius.map((r) => speedAt(r) + next());
  const found = coastSpeeds(still, 0, time, radius, 0, 199, { t: time, y }, 1)!;
  // 1 m/s over √199 samples.
  expect(Math.abs(found.speeds[0]! - 7700)).toBeLessThan(0.2);
  expect(found.speeds[150]! - found.speeds[0]!).toBeCloseTo(speedAt(radius[150]!) - 7700, 3);
});

test('a display that lags is not taken for a coast', () => {
  const y = radius.map((r, i) => speedAt(r) - 30 * Math.exp(-time[i]! / 10));
  expect(coastSpeeds(still, 0, time, radius, 0, 199, { t: time, y }, 1)).toBeNull();
});

test('altitude and rate of a parabola', () => {
  const y = time.map((x) => 200000 + 100 * x - 0.4 * x * x);
  const found = coastAltitude(time, 0, 199, { t: time, y })!;
  expect(found.altitude[0]!).toBeCloseTo(200000, 4);
  expect(found.rate[0]!).toBeCloseTo(100, 6);
  expect(found.rate[100]!).toBeCloseTo(84, 6);
});
