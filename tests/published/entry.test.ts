import { describe, expect, test } from 'vitest';
import { allenEggersPeak } from '../../src/flight/wayDown/allenEggers.ts';
import { heatFlux_W_m2, heatingConstant } from '../../src/flight/wayDown/heating.ts';
import { terminalSpeed_m_s } from '../../src/flight/wayDown/terminalSpeed.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../src/units/standardGravity.ts';
import { EARTH, MARS, MOON } from '../../src/world/bodies.ts';
import { fall } from '../fallingBodies.ts';

const foot_m = 0.3048;
const slug_kg = 14.593903;

/** Iron sphere of one foot: m/(Cd·A) = ρ·(π/6)d³/(π/4·d²) with Cd 1. */
const sphere = {
  scaleHeight_m: 22_000 * foot_m,
  density_kg_m3: (0.0034 * slug_kg) / foot_m ** 3,
  ballisticCoefficient_kg_m2: (7874 * 2 * foot_m) / 3,
  speed_m_s: 30_000 * foot_m,
};

describe('ballistic entry, Allen & Eggers 1958 (NACA Report 1381)', () => {
  // Inputs: parkinresearch.com, ballistic re-entry. Results computed by an independent program.
  test('iron sphere, vertical at 30,000 ft/s from 40 miles: the formula', () => {
    const peak = allenEggersPeak(
      sphere.speed_m_s,
      Math.PI / 2,
      sphere.scaleHeight_m,
      sphere.density_kg_m3,
      sphere.ballisticCoefficient_kg_m2,
    );
    expect(peak.deceleration_m_s2 / foot_m).toBeCloseTo(7524.8, 1);
    expect(peak.deceleration_m_s2 / STANDARD_GRAVITY_M_S2).toBeCloseTo(233.88, 2);
    expect(peak.speed_m_s / foot_m).toBeCloseTo(18_195.9, 1);
    // Constants of the inputs have four digits: a foot or two in the logarithm.
    expect(Math.abs(peak.altitude_m / foot_m - 43_865)).toBeLessThan(5);
  });

  test('the formula agrees with our own integration within 0.1 %', () => {
    // No gravity: the formula's straight path.
    const path = fall({
      ...sphere,
      mu_m3_s2: 1e-3,
      radius_m: 6.4e6,
      altitude_m: 40 * 5280 * foot_m,
      angle_rad: -Math.PI / 2,
      shape: 'flat',
      period_s: 0.002,
    });
    const top = path.drag_N.reduce((best, a, i) => (a > path.drag_N[best]! ? i : best), 0);
    const peak = allenEggersPeak(
      sphere.speed_m_s,
      Math.PI / 2,
      sphere.scaleHeight_m,
      sphere.density_kg_m3,
      1,
    );
    expect(Math.abs(path.drag_N[top]! / peak.deceleration_m_s2 - 1)).toBeLessThan(1e-3);
    // The integration's own published figures (from 40 miles, not from infinity).
    expect(Math.abs(path.drag_N[top]! / foot_m - 7528.6)).toBeLessThan(0.2);
    expect(Math.abs(path.altitude_m[top]! / foot_m - 43_865)).toBeLessThan(40);
  });

  test('shallow: 7.8 km/s at 6° through a scale height of 7.16 km is 16.66 g', () => {
    const peak = allenEggersPeak(7800, (6 * Math.PI) / 180, 7160, 1.225, 100);
    expect(peak.deceleration_m_s2 / STANDARD_GRAVITY_M_S2).toBeCloseTo(16.66, 2);
  });
});

describe('heat at the stagnation point, Sutton & Graves 1971 (constants seen second-hand)', () => {
  test('Earth 1.7415e-4, Mars 1.9027e-4, none elsewhere', () => {
    expect(heatingConstant(EARTH)).toBe(1.7415e-4);
    expect(heatingConstant(MARS)).toBe(1.9027e-4);
    expect(heatingConstant(MOON)).toBeNull();
  });

  test('goes with √ρ, V³ and 1/√Rn', () => {
    const q = heatFlux_W_m2(1.7415e-4, 1e-4, 7500, 1);
    expect(q).toBeCloseTo(1.7415e-4 * 1e-2 * 7500 ** 3, 6);
    expect(heatFlux_W_m2(1.7415e-4, 4e-4, 7500, 1) / q).toBeCloseTo(2, 12);
    expect(heatFlux_W_m2(1.7415e-4, 1e-4, 15_000, 1) / q).toBeCloseTo(8, 12);
    expect(heatFlux_W_m2(1.7415e-4, 1e-4, 7500, 4) / q).toBeCloseTo(0.5, 12);
  });
});

describe('terminal speed', () => {
  test('a fall from rest in even air follows v = v∞·tanh(g·t/v∞) (closed form)', () => {
    const g = 9.81;
    const radius_m = 6.4e6;
    const path = fall({
      mu_m3_s2: g * radius_m ** 2,
      radius_m,
      density_kg_m3: 1.2,
      // So high a scale height that the air is even over the fall.
      scaleHeight_m: 1e12,
      ballisticCoefficient_kg_m2: 50,
      altitude_m: 900,
      speed_m_s: 0,
      angle_rad: -Math.PI / 2,
      shape: 'flat',
      period_s: 0.5,
    });
    const terminal = terminalSpeed_m_s(50, g, 1.2, 1);
    expect(terminal).toBeCloseTo(Math.sqrt((2 * 50 * g) / 1.2), 12);
    path.time_s.forEach((t, i) => {
      expect(path.speed_m_s[i]!).toBeCloseTo(terminal * Math.tanh((g * t) / terminal), 6);
    });
    expect(path.speed_m_s.at(-1)! / terminal).toBeGreaterThan(0.9999);
  });
});
