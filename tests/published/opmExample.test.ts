import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { elementsFromState, semiMajorAxis_m } from '../../src/orbit/elements.ts';
import { strictOpm } from '../exchange/ccsds/strictReader.ts';

const DEG = 180 / Math.PI;

/** CCSDS 502.0-B, example OPM of Eutelsat W4 (as in Orekit, src/test/resources/ccsds/odm/opm/OPMExample2.txt). */
const { state, elements, rest, manoeuvres } = strictOpm(
  readFileSync(new URL('../exchange/ccsds/examples/opm-eutelsat-w4.txt', import.meta.url), 'utf8'),
);
const { X = 0, Y = 0, Z = 0, X_DOT = 0, Y_DOT = 0, Z_DOT = 0 } = state;
const printed = elements ?? {};
const found = elementsFromState((printed.GM ?? 0) * 1e9, {
  position_m: [X * 1000, Y * 1000, Z * 1000],
  velocity_m_s: [X_DOT * 1000, Y_DOT * 1000, Z_DOT * 1000],
});

test('its state has its elements', () => {
  // The printed state has 8 digits of velocity, good for 0.7 m of semi-major axis and 3e-5° of the flat angles.
  expect(Math.abs(semiMajorAxis_m(found) / 1000 - (printed.SEMI_MAJOR_AXIS ?? 0))).toBeLessThan(0.001);
  expect(Math.abs(found.eccentricity - (printed.ECCENTRICITY ?? 0))).toBeLessThan(2e-8);
  expect(Math.abs(found.inclination_rad * DEG - (printed.INCLINATION ?? 0))).toBeLessThan(1e-6);
  expect(Math.abs(found.ascendingNode_rad * DEG - (printed.RA_OF_ASC_NODE ?? 0))).toBeLessThan(1e-5);
  expect(Math.abs(found.argumentOfPeriapsis_rad * DEG - (printed.ARG_OF_PERICENTER ?? 0))).toBeLessThan(5e-5);
});

test('what it prints as the true anomaly is the mean one', () => {
  // Kepler's equation from the true anomaly that the state has.
  const { eccentricity: e, trueAnomaly_rad: nu } = found;
  const E = 2 * Math.atan(Math.sqrt((1 - e) / (1 + e)) * Math.tan(nu / 2));
  expect((E - e * Math.sin(E)) * DEG).toBeCloseTo(printed.TRUE_ANOMALY ?? 0, 4);
  expect(nu * DEG).toBeCloseTo(43.5494, 3);
});

test('its first manoeuvre keeps the rocket equation with a specific impulse of 316.9 s', () => {
  const [burn = {}] = manoeuvres;
  const deltaV = Math.hypot(...[1, 2, 3].map((i) => Number(burn[`MAN_DV_${i}`]))) * 1000;
  const mass = rest.MASS ?? 0;
  expect(deltaV).toBeCloseTo(30.0668, 4);
  const exhaust = deltaV / Math.log(mass / (mass + Number(burn.MAN_DELTA_MASS)));
  // Worked out by hand: 3107.9 m/s.
  expect(exhaust / 9.80665).toBeCloseTo(316.9, 1);
});
