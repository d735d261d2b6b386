import { describe, expect, test } from 'vitest';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';
import { circularSpeed, speedAtApsis } from '../../src/orbit/transfers.ts';

const mu = 3.986004418e14;
const radius = 6_578_137;

describe('orbitFromPlanarState', () => {
  test('a circle is a circle to the last digits', () => {
    const orbit = orbitFromPlanarState(mu, radius, 0, circularSpeed(mu, radius));
    expect(orbit.eccentricity).toBeLessThan(1e-15);
    expect(orbit.apoapsisRadius_m).toBeCloseTo(radius, 6);
    expect(orbit.periapsisRadius_m).toBeCloseTo(radius, 6);
    expect(orbit.period_s).toBeCloseTo(2 * Math.PI * Math.sqrt(radius ** 3 / mu), 8);
  });

  test('a nearly circular orbit keeps its small eccentricity', () => {
    // A radial speed of 1 mm/s on a circle gives e = 1e-3/v to first order, whatever else.
    const speed = circularSpeed(mu, radius);
    const orbit = orbitFromPlanarState(mu, radius, 1e-3, speed);
    expect(orbit.eccentricity / (1e-3 / speed)).toBeCloseTo(1, 8);
    expect(orbit.apoapsisRadius_m - orbit.periapsisRadius_m).toBeCloseTo((2 * radius * 1e-3) / speed, 6);
  });

  test('energy and angular momentum at both apsides are those of the state', () => {
    const orbit = orbitFromPlanarState(mu, radius, 1200, 8100);
    for (const [at, other] of [
      [orbit.apoapsisRadius_m, orbit.periapsisRadius_m],
      [orbit.periapsisRadius_m, orbit.apoapsisRadius_m],
    ] as const) {
      const speed = speedAtApsis(mu, at, other);
      expect((speed * speed) / 2 - mu / at).toBeCloseTo((1200 ** 2 + 8100 ** 2) / 2 - mu / radius, 5);
      expect((speed * at) / (8100 * radius)).toBeCloseTo(1, 13);
    }
    expect(orbit.semiMajorAxis_m).toBeCloseTo((orbit.apoapsisRadius_m + orbit.periapsisRadius_m) / 2, 6);
  });

  test('unbound: no apoapsis, no period, negative axis of a hyperbola', () => {
    const hyperbola = orbitFromPlanarState(mu, radius, 500, 12_000);
    expect(hyperbola.apoapsisRadius_m).toBe(Number.POSITIVE_INFINITY);
    expect(hyperbola.period_s).toBeNull();
    expect(hyperbola.semiMajorAxis_m).toBeLessThan(0);
    expect(hyperbola.energy_J_kg).toBeGreaterThan(0);
    expect(hyperbola.semiMajorAxis_m * (1 - hyperbola.eccentricity)).toBeCloseTo(
      hyperbola.periapsisRadius_m,
      5,
    );
  });

  test('a straight fall: eccentricity 1, periapsis at the centre, apoapsis where it stops', () => {
    const fall = orbitFromPlanarState(mu, radius, 1000, 0);
    expect(fall.eccentricity).toBe(1);
    expect(fall.periapsisRadius_m).toBe(0);
    const top = 1 / (1 / radius - 1000 ** 2 / (2 * mu));
    expect(fall.apoapsisRadius_m).toBeCloseTo(top, 6);
  });

  test('going round the other way changes nothing', () => {
    expect(orbitFromPlanarState(mu, radius, -300, -7000)).toEqual(
      orbitFromPlanarState(mu, radius, -300, 7000),
    );
  });
});
