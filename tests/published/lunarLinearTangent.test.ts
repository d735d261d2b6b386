import { expect, test } from 'vitest';
import { simulateLunarLinearTangent } from './simulated/lunarLinearTangent.ts';

/**
 * Longuski, Guzmán & Prussing, Optimal Control with Aerospace Applications, §4.6: flat Moon, tan θ = b + a t
 * with a = −0.00828051 /s, b = 2.74739928 and about 481 s to 185 km and 1627 m/s level (as published in the
 * tests of an open-source optimal-control package). The losses were computed apart from this program.
 */
test('lunar ascent by linear tangent reaches its target with the losses known for it', () => {
  const flight = simulateLunarLinearTangent();
  // The steering constants have nine digits; over 480 s they leave some 0.1 m and 0.001 m/s.
  expect(Math.abs(flight.altitude_m - 185000)).toBeLessThan(1);
  expect(Math.abs(flight.climb_m_s)).toBeLessThan(0.01);
  expect(Math.abs(flight.truth.speed - 1627)).toBeLessThan(0.001);
  expect(Math.abs(flight.truth.ideal - 2336.2422)).toBeLessThan(0.001);
  expect(Math.abs(flight.truth.gravity - 464.8844)).toBeLessThan(0.001);
  expect(Math.abs(flight.truth.steering - 244.3579)).toBeLessThan(0.001);
  const { ideal, steering, gravity, speed } = flight.truth;
  expect(Math.abs(ideal - steering - gravity - speed)).toBeLessThan(1e-7);
});
