import { expect, test } from 'vitest';
import { EARTH, MARS, MOON } from '../../src/world/bodies.ts';
import { gravity_m_s2 } from '../../src/world/gravity.ts';

test('gravitational parameters: WGS 84; JPL DE440 (gm_de440.tpc, km³/s²)', () => {
  expect(EARTH.mu_m3_s2).toBe(3.986004418e14);
  expect(MOON.mu_m3_s2 / 1e9).toBeCloseTo(4902.8001184575496, 9);
  expect(MARS.mu_m3_s2 / 1e9).toBeCloseTo(42828.37362069909, 8);
});

test('radii: WGS 84; NAIF pck00011.tpc', () => {
  expect([EARTH.radius_m, MOON.radius_m, MARS.radius_m]).toEqual([6378137, 1737400, 3396190]);
});

test('spin: 7.2921154e-5, 2.6616995e-6, 7.0882181e-5 rad/s from NAIF pck00011.tpc', () => {
  // The sidereal day of 86,164.0905 s gives Earth's spin to 3e-8 of the IAU's 360.9856235 °/day.
  expect(EARTH.spin_rad_s / 7.2921154e-5 - 1).toBeLessThan(1e-7);
  expect(MOON.spin_rad_s / 2.6616995e-6).toBeCloseTo(1, 7);
  expect(MARS.spin_rad_s / 7.0882181e-5).toBeCloseTo(1, 7);
});

test('gravity at the surface (from memory: Earth 9.798 at the equatorial radius, Moon 1.62, Mars 3.71 m/s²)', () => {
  expect(gravity_m_s2(EARTH, EARTH.radius_m)).toBeCloseTo(9.798, 3);
  expect(gravity_m_s2(MOON, MOON.radius_m)).toBeCloseTo(1.62, 2);
  expect(gravity_m_s2(MARS, MARS.radius_m)).toBeCloseTo(3.71, 2);
});
