import { describe, expect, test } from 'vitest';
import { goddardByPrinciple, goddardBySearch } from './optima/goddard.ts';

// COPS 3.0, best known altitude 1.01283 (MadNLP/COPSBenchmark.jl test/runtests.jl @867802f), given to five decimals.
const printed = 1.01283;

describe('the Goddard rocket', () => {
  test('by Pontryagin’s principle', () => {
    // Measured: 1.0128369.
    expect(Math.abs(goddardByPrinciple() - printed)).toBeLessThan(2e-5);
  });

  test('by search, which comes to the same height and not above it', () => {
    const { summit, settled } = goddardBySearch(6);
    expect(settled).toBe(true);
    expect(Math.abs(summit - printed)).toBeLessThan(2e-5);
    const best = goddardByPrinciple();
    // Measured: 8e-8 under it with six nodes.
    expect(best - summit).toBeLessThan(3e-7);
    expect(summit).toBeLessThan(best + 1e-9);
  });
});
