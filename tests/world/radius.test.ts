import { expect, test } from 'vitest';
import { EARTH } from '../../src/world/bodies.ts';
import { radiusAt_m, radiusSlope_m } from '../../src/world/radius.ts';
import type { World } from '../../src/world/types.ts';

// Fischer 1960, on which the Apollo insertion states were counted.
const fischer: World = { ...EARTH, ellipsoid: { equatorialRadius_m: 6378166, flattening: 1 / 298.3 } };

test('a spherical world adds its radius at any latitude', () => {
  expect(radiusAt_m(EARTH, 1000, 0.5)).toBe(6379137);
});

test('an ellipsoid: equator, pole, the same north and south', () => {
  expect(radiusAt_m(fischer, 0, 0)).toBeCloseTo(6378166, 6);
  expect(radiusAt_m(fischer, 0, Math.PI / 2)).toBeCloseTo(6378166 * (1 - 1 / 298.3), 6);
  expect(radiusAt_m(fischer, 500, -0.4)).toBe(radiusAt_m(fischer, 500, 0.4));
});

test('its slope is what the radius changes by, none on a sphere, at the equator and at a pole', () => {
  for (const phi of [-1.2, -0.4, 0.1, 0.785, 1.5]) {
    const step = 1e-4;
    const difference = (radiusAt_m(fischer, 0, phi + step) - radiusAt_m(fischer, 0, phi - step)) / (2 * step);
    expect(Math.abs(radiusSlope_m(fischer, phi) - difference)).toBeLessThan(0.01);
  }
  expect(radiusSlope_m(EARTH, 0.785)).toBe(0);
  expect(radiusSlope_m(fischer, 0)).toBeCloseTo(0, 9);
  expect(radiusSlope_m(fischer, Math.PI / 2)).toBeCloseTo(0, 6);
});

test('Apollo 11 insertion: 626,909 ft at 32.5027° N geocentric (Orloff) is 6,563,052 m (AS-506 report, table 10-2)', () => {
  // The report's own R; altitude is printed to a foot, latitude to 4 digits; measured 71 m apart, within the
  // 250 m that the report gives as the spread of its insertion solutions.
  const r = radiusAt_m(fischer, 626_909 * 0.3048, (32.5027 * Math.PI) / 180);
  expect(Math.abs(r - 6_563_052)).toBeLessThan(250);
});
