import { describe, expect, test } from 'vitest';
import { elementsFromState, semiMajorAxis_m, stateFromElements } from '../../src/orbit/elements.ts';
import { propagate, timeToApsis, type Vector } from '../../src/orbit/kepler.ts';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';
import { circularSpeed } from '../../src/orbit/transfers.ts';

const DEGREE = Math.PI / 180;
const CURTIS_EARTH_MU = 398_600e9;
const VALLADO_EARTH_MU = 398_600.4418e9;
const km = (x: number, y: number, z: number): Vector => [x * 1e3, y * 1e3, z * 1e3];

/** Within half a unit of the last printed digit, unless a wider one is said why. */
const near = (value: number, printed: number, half: number) =>
  expect(Math.abs(value - printed)).toBeLessThanOrEqual(half);

describe('Curtis, Orbital Mechanics for Engineering Students', () => {
  test('example 4.3: elements from a state', () => {
    // Inputs from poliastro's tests; printed outputs from memory, the digits beyond them worked out independently.
    const state = { position_m: km(-6045, -3490, 2500), velocity_m_s: km(-3.457, 6.618, 2.533) };
    const elements = elementsFromState(CURTIS_EARTH_MU, state);
    near(elements.inclination_rad / DEGREE, 153.24923, 5e-6);
    near(elements.ascendingNode_rad / DEGREE, 255.27929, 5e-6);
    near(elements.eccentricity, 0.17121235, 5e-9);
    near(elements.argumentOfPeriapsis_rad / DEGREE, 20.06832, 5e-6);
    near(elements.trueAnomaly_rad / DEGREE, 28.44563, 5e-6);
    near(semiMajorAxis_m(elements) / 1e3, 8788.0951, 5e-5);
    near(Math.sqrt(elements.semiLatusRectum_m * CURTIS_EARTH_MU) / 1e6, 58311.67, 5e-3);
    // The book prints 58,310 km²/s, 153.2°, 255.3°, 0.1712, 20.07°, 28.45°, 8788 km, 2.278 h.
    near(elements.inclination_rad / DEGREE, 153.2, 0.05);
    near(elements.trueAnomaly_rad / DEGREE, 28.45, 0.005);
    near((2 * Math.PI * Math.sqrt(semiMajorAxis_m(elements) ** 3 / CURTIS_EARTH_MU)) / 3600, 2.278, 6e-4);
  });

  test('example 3.5: a hyperbola from its periapsis', () => {
    // Printed in poliastro's test_propagation.py: 163,180 km and 10.51 km/s after 14,941 s; Earth radius 6378 km.
    const start = { position_m: km(6678, 0, 0), velocity_m_s: km(0, 15, 0) };
    const end = propagate(CURTIS_EARTH_MU, start, 14_941);
    near(Math.hypot(...end.position_m) / 1e3, 163_180, 10);
    near(Math.hypot(...end.velocity_m_s) / 1e3, 10.51, 0.005);
  });

  test('an ellipse of 15,300 km and e = 0.37255: momentum and time since periapsis at 120°', () => {
    // Printed in poliastro's test_orbit.py: h 72,472 km²/s, 4077 s.
    const state = stateFromElements(CURTIS_EARTH_MU, {
      semiLatusRectum_m: 15_300e3 * (1 - 0.37255 ** 2),
      eccentricity: 0.37255,
      inclination_rad: 0,
      ascendingNode_rad: 0,
      argumentOfPeriapsis_rad: 0,
      trueAnomaly_rad: 120 * DEGREE,
    });
    const [x, y] = state.position_m;
    const [vx, vy] = state.velocity_m_s;
    const radius = Math.hypot(x, y);
    const momentum = x * vy - y * vx;
    near(momentum / 1e6, 72_472, 0.5);
    const up = (x * vx + y * vy) / radius;
    // Time since periapsis is the time to it with the motion turned round.
    near(timeToApsis(CURTIS_EARTH_MU, radius, -up, momentum / radius, 'periapsis') ?? Number.NaN, 4077, 0.5);
    const period =
      orbitFromPlanarState(CURTIS_EARTH_MU, radius, up, momentum / radius).period_s ?? Number.NaN;
    near((360 * 4077) / period, 77.93, 0.01);
  });

  test('speed on a circle of 7000 km', () => {
    // poliastro's test_elements.py: 7.5460491 km/s.
    near(circularSpeed(CURTIS_EARTH_MU, 7000e3) / 1e3, 7.5460491, 5e-8);
  });
});

describe('Vallado, Fundamentals of Astrodynamics and Applications', () => {
  test('example 2-4: Kepler’s problem, 40 minutes', () => {
    // Printed in poliastro's test_propagation.py.
    const start = {
      position_m: km(1131.34, -2282.343, 6672.423),
      velocity_m_s: km(-5.64305, 4.30333, 2.42879),
    };
    const end = propagate(VALLADO_EARTH_MU, start, 2400);
    const printed = km(-4219.7527, 4363.0292, -3958.7666);
    const printedSpeed = km(3.689866, -1.916735, -6.112511);
    // Printed to 0.1 m and 1 mm/s.
    for (let i = 0; i < 3; i++) {
      near(end.position_m[i] ?? Number.NaN, printed[i] ?? Number.NaN, 0.06);
      near(end.velocity_m_s[i] ?? Number.NaN, printedSpeed[i] ?? Number.NaN, 6e-4);
    }
  });

  test('example 2-5: elements from a state', () => {
    // r from Vallado's companion code ex2_5.m (poliastro's copy swaps two digits); outputs from poliastro's
    // test_orbit.py, a from memory; digits beyond them worked out independently.
    const elements = elementsFromState(VALLADO_EARTH_MU, {
      position_m: km(6524.834, 6862.875, 6448.296),
      velocity_m_s: km(4.901327, 5.533756, -1.976341),
    });
    near(elements.semiLatusRectum_m / 1e3, 11_067.7983, 1e-3);
    near(semiMajorAxis_m(elements) / 1e3, 36_127.3376, 1e-3);
    near(elements.eccentricity, 0.8328534, 5e-8);
    near(elements.inclination_rad / DEGREE, 87.869126, 1e-6);
    near(elements.ascendingNode_rad / DEGREE, 227.89826, 1e-6);
    near(elements.argumentOfPeriapsis_rad / DEGREE, 53.384931, 1e-6);
    near(elements.trueAnomaly_rad / DEGREE, 92.335157, 1e-6);
  });

  test('example 2-6: the state from elements', () => {
    // Printed in poliastro's test_orbit.py to 1 m and 1 mm/s, from angles printed to 0.01° and 0.001°.
    const state = stateFromElements(VALLADO_EARTH_MU, {
      semiLatusRectum_m: 11_067.79e3,
      eccentricity: 0.83285,
      inclination_rad: 87.87 * DEGREE,
      ascendingNode_rad: 227.89 * DEGREE,
      argumentOfPeriapsis_rad: 53.38 * DEGREE,
      trueAnomaly_rad: 92.335 * DEGREE,
    });
    const printed = km(6525.344, 6861.535, 6449.125);
    const printedSpeed = km(4.902276, 5.533124, -1.975709);
    for (let i = 0; i < 3; i++) {
      near(state.position_m[i] ?? Number.NaN, printed[i] ?? Number.NaN, 60);
      near(state.velocity_m_s[i] ?? Number.NaN, printedSpeed[i] ?? Number.NaN, 0.05);
    }
  });
});
