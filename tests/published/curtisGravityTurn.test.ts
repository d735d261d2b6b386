import { expect, test } from 'vitest';
import { simulateCurtisGravityTurn } from './simulated/curtisGravityTurn.ts';

/** Curtis, Orbital Mechanics for Engineering Students, example 11.3 (eds 2, 3), mass ratio 15. */
const flight = simulateCurtisGravityTurn();

const within = (value: number, expected: number, part: number) =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(part);

test('agrees with the printed table to the book’s own accuracy', () => {
  // Printed digits, from memory; the book's integrator steps over the kink at 130 m.
  within(flight.burnout_s, 260, 1e-6);
  within(flight.truth.speed, 8621.39, 2e-3);
  within(flight.burnout.flightPathAngle_deg, 8.8, 2e-3);
  within(flight.burnout.altitude_m, 133211, 2e-3);
  within(flight.burnout.downrange_m, 463e3, 2e-3);
  within(flight.truth.drag, 298.199, 2e-3);
  within(flight.truth.gravity, 1440.96, 2e-3);
});

test('agrees with an independent integration of the book’s equations (SciPy, tolerance 1e-9)', () => {
  within(flight.burnout.pitchOver_s, 8.02, 1e-4);
  within(flight.truth.speed, 8621.35, 1e-5);
  within(flight.burnout.flightPathAngle_deg, 8.8132, 1e-4);
  within(flight.burnout.altitude_m, 133300, 1e-4);
  within(flight.burnout.downrange_m, 462276, 1e-4);
  within(flight.truth.drag, 298.121, 1e-4);
  within(flight.truth.gravity, 1441.262, 1e-5);
  within(flight.truth.ideal, 10360.729, 1e-7);
  within(flight.burnout.maxDynamicPressure_Pa, 15861.6, 1e-4);
  expect(Math.abs(flight.burnout.maxDynamicPressure_s - 67.84)).toBeLessThan(0.1);
});

test('thrust along the path loses nothing to steering, and the books close', () => {
  const { ideal, steering, drag, gravity, speed } = flight.truth;
  expect(Math.abs(steering)).toBeLessThan(1e-9);
  expect(Math.abs(ideal - steering - drag - gravity - speed)).toBeLessThan(1e-6);
});
