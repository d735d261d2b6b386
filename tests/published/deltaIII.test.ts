import { describe, expect, test } from 'vitest';
import { semiMajorAxis_m } from '../../src/orbit/elements.ts';
import { fullMass_kg } from '../../src/refly/rocket.ts';
import { deltaIII, optimizeDeltaIII } from './optima/deltaIII.ts';

const degree = 180 / Math.PI;

// Benson 2004, GPOPS manual, Betts 2010. Printed: 7529.661 kg, 924.1413 s (PSOPT application examples, §16) by
// collocation on at most 25 nodes a phase; Betts's own 7529.7124 kg, from memory.
const printed_kg = 7529.661;
const betts_kg = 7529.7124;

describe('Delta III to a geostationary transfer orbit', () => {
  const held = optimizeDeltaIII(true);

  test('the rocket is the benchmark’s', () => {
    expect(fullMass_kg(deltaIII)).toBeCloseTo(301454, 6);
  });

  /**
   * Measured: 7529.7095 kg at 924.1393 s, flown at a relative tolerance of 1e-12; the search at 1e-9 is 4e-5 kg
   * off that. It lies between the two printed values, 0.049 kg (6 parts in a million) over the coarser one and
   * 0.003 kg under Betts's, which nothing may beat.
   */
  test('is reached and not beaten', () => {
    expect(held.settled).toBe(true);
    expect(Math.abs(held.finalMass_kg - printed_kg)).toBeLessThan(0.0005 * printed_kg);
    expect(held.finalMass_kg).toBeGreaterThan(betts_kg - 0.01);
    expect(held.finalMass_kg).toBeLessThan(betts_kg + 2e-4);
    expect(Math.abs(held.time_s - 924.1413)).toBeLessThan(0.005);
  });

  test('ends in the target orbit', () => {
    // Measured: 6e-8 m, 4e-10 and, in degrees, 6e-9, 1e-8, 2e-7.
    expect(Math.abs(semiMajorAxis_m(held.orbit) - 24361140)).toBeLessThan(0.01);
    expect(Math.abs(held.orbit.eccentricity - 0.7308)).toBeLessThan(1e-7);
    expect(Math.abs(held.orbit.inclination_rad * degree - 28.5)).toBeLessThan(1e-5);
    expect(Math.abs(held.orbit.ascendingNode_rad * degree - 269.8)).toBeLessThan(1e-5);
    expect(Math.abs(held.orbit.argumentOfPeriapsis_rad * degree - 130.5)).toBeLessThan(1e-5);
  });

  /** Freed, the argument of perigee goes to 130.29° and the mass rises by 0.078 kg, to 7529.788 kg. */
  test('the argument of perigee, freed, gives little', () => {
    const free = optimizeDeltaIII(false, held.controls);
    expect(free.settled).toBe(true);
    const gain_kg = free.finalMass_kg - held.finalMass_kg;
    // A snapshot: nobody has printed this figure.
    expect(gain_kg).toBeGreaterThan(0.07);
    expect(gain_kg).toBeLessThan(0.09);
    expect(Math.abs(free.orbit.argumentOfPeriapsis_rad * degree - 130.29)).toBeLessThan(0.03);
  });
});
