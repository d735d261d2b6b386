import { describe, expect, test } from 'vitest';
import {
  elementsFromState,
  inclinationFromHeading,
  semiMajorAxis_m,
  stateFromElements,
} from '../../src/orbit/elements.ts';

const mu = 3.986004418e14;
const p = 8_000_000;
const base = {
  semiLatusRectum_m: p,
  eccentricity: 0.2,
  inclination_rad: 0.9,
  ascendingNode_rad: 4,
  argumentOfPeriapsis_rad: 5,
  trueAnomaly_rad: 1,
};

describe('elements to state and back', () => {
  test.each([
    ['ellipse', {}],
    ['retrograde', { inclination_rad: 2.8 }],
    ['parabola', { eccentricity: 1 }],
    ['hyperbola before periapsis', { eccentricity: 1.7, trueAnomaly_rad: -1 }],
    ['circle: the anomaly counts from the node', { eccentricity: 0, argumentOfPeriapsis_rad: 0 }],
    ['equatorial: periapsis counts from the first axis', { inclination_rad: 0, ascendingNode_rad: 0 }],
    ['equatorial, retrograde', { inclination_rad: Math.PI, ascendingNode_rad: 0 }],
    [
      'equatorial circle: the anomaly counts from the first axis',
      { eccentricity: 0, argumentOfPeriapsis_rad: 0, inclination_rad: 0, ascendingNode_rad: 0 },
    ],
  ])('%s', (_, change) => {
    const elements = { ...base, ...change };
    const back = elementsFromState(mu, stateFromElements(mu, elements));
    expect(back.semiLatusRectum_m / p).toBeCloseTo(1, 13);
    expect(back.eccentricity).toBeCloseTo(elements.eccentricity, 13);
    expect(back.inclination_rad).toBeCloseTo(elements.inclination_rad, 12);
    expect(back.ascendingNode_rad).toBeCloseTo(elements.ascendingNode_rad, 12);
    expect(back.argumentOfPeriapsis_rad).toBeCloseTo(elements.argumentOfPeriapsis_rad, 12);
    expect(back.trueAnomaly_rad).toBeCloseTo(elements.trueAnomaly_rad, 12);
    expect(back.circular).toBe(elements.eccentricity === 0);
    expect(back.equatorial).toBe(Math.sin(elements.inclination_rad) < 1e-9);
  });

  test('an eccentricity of 1e-7 and an inclination of 1e-7 keep six digits', () => {
    const small = { ...base, eccentricity: 1e-7, inclination_rad: 1e-7 };
    const back = elementsFromState(mu, stateFromElements(mu, small));
    expect(back.eccentricity / 1e-7).toBeCloseTo(1, 6);
    expect(back.inclination_rad / 1e-7).toBeCloseTo(1, 6);
    expect(back.argumentOfPeriapsis_rad).toBeCloseTo(base.argumentOfPeriapsis_rad, 6);
  });

  test('semi-major axis: negative for a hyperbola, infinite for a parabola', () => {
    expect(semiMajorAxis_m({ semiLatusRectum_m: p, eccentricity: 0.5 })).toBeCloseTo(p / 0.75, 6);
    expect(semiMajorAxis_m({ semiLatusRectum_m: p, eccentricity: 2 })).toBeCloseTo(-p / 3, 6);
    expect(semiMajorAxis_m({ semiLatusRectum_m: p, eccentricity: 1 })).toBe(Number.POSITIVE_INFINITY);
  });
});

test('inclination from latitude and heading: east from the equator 0, north a pole orbit, west retrograde', () => {
  expect(inclinationFromHeading(0, Math.PI / 2)).toBeCloseTo(0, 15);
  expect(inclinationFromHeading(0.3, 0)).toBeCloseTo(Math.PI / 2, 15);
  expect(inclinationFromHeading(0.3, Math.PI / 2)).toBeCloseTo(0.3, 15);
  expect(inclinationFromHeading(0.3, -Math.PI / 2)).toBeCloseTo(Math.PI - 0.3, 15);
});
