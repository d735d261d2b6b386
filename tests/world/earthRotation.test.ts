import { expect, test } from 'vitest';
import { greenwichMeanSiderealAngle_rad } from '../../src/world/earthRotation.ts';

const DEG = 180 / Math.PI;

test('the mean sidereal angle of 1992-08-20 12:14 UT1 is the textbook’s', () => {
  // Vallado, Fundamentals of Astrodynamics, example 3-5: 152.578787810° (from memory).
  const angle = greenwichMeanSiderealAngle_rad(Date.UTC(1992, 7, 20, 12, 14) / 1000) * DEG;
  expect(Math.abs(angle - 152.57878781)).toBeLessThan(2e-6);
});

test('at J2000 it is 280.46062°', () => {
  // Astronomical Almanac: 18 h 41 min 50.54841 s at 2000-01-01 12:00 UT1 (from memory).
  const expected = ((18 + 41 / 60 + 50.54841 / 3600) / 24) * 360;
  expect(greenwichMeanSiderealAngle_rad(Date.UTC(2000, 0, 1, 12) / 1000) * DEG).toBeCloseTo(expected, 9);
});

test('it turns once in a mean sidereal day', () => {
  const from = Date.UTC(2031, 4, 14, 6) / 1000;
  // 86164.09054 s (Aoki and others 1982).
  const turned = greenwichMeanSiderealAngle_rad(from + 86164.09054) - greenwichMeanSiderealAngle_rad(from);
  expect(Math.abs(turned)).toBeLessThan(1e-8);
});

test('it stays between 0 and one turn before 1970, too', () => {
  for (const year of [1957, 1969, 1970, 2100]) {
    const angle = greenwichMeanSiderealAngle_rad(Date.UTC(year, 5, 3, 23, 59, 59) / 1000);
    expect(angle).toBeGreaterThanOrEqual(0);
    expect(angle).toBeLessThan(2 * Math.PI);
  }
});
