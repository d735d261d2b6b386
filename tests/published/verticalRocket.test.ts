import { expect, test } from 'vitest';
import { STANDARD_GRAVITY_M_S2 as g } from '../../src/units/standardGravity.ts';
import { simulateVerticalRocket } from './simulated/verticalRocket.ts';

/** Curtis, Orbital Mechanics for Engineering Students, example 11.2 / 13.2: closed forms, from memory. */
test('vertical rocket without air meets the closed forms of burnout and peak', () => {
  const flight = simulateVerticalRocket();
  const c = 300 * g;
  const burn = (300 / 2) * (1 - 1 / 4);
  const speed = c * Math.log(4) - g * burn;
  const altitude = c * burn * (1 - Math.log(4) / 3) - (g * burn ** 2) / 2;
  expect(flight.burnout_s).toBeCloseTo(burn, 9);
  expect(flight.truth.ideal).toBeCloseTo(c * Math.log(4), 7);
  expect(flight.truth.gravity).toBeCloseTo(g * burn, 7);
  expect(Math.abs(flight.truth.steering)).toBeLessThan(1e-12);
  expect(flight.truth.speed).toBeCloseTo(speed, 7);
  expect(flight.burnoutAltitude_m).toBeCloseTo(altitude, 4);
  expect(flight.peakAltitude_m).toBeCloseTo(altitude + speed ** 2 / (2 * g), 3);
  // The same, in figures computed apart from this program.
  expect(flight.truth.ideal).toBeCloseTo(4078.4711, 4);
  expect(flight.truth.gravity).toBeCloseTo(1103.2481, 4);
  expect(flight.truth.speed).toBeCloseTo(2975.223, 4);
  expect(flight.burnoutAltitude_m).toBeCloseTo(115974.07, 2);
  expect(flight.peakAltitude_m).toBeCloseTo(567297.99, 2);
});
