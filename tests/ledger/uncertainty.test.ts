import { describe, expect, test } from 'vitest';
import { type EntryError, entryNames, ledgerErrors, quantile } from '../ledgerErrors.ts';
import { type Disturbance, instruments, tenths } from '../noisyFlights.ts';
import { referenceNames } from '../referenceFlights.ts';

/**
 * Reference flights through a hand pilot's instruments, the card's values redrawn for each seed: do the 95 %
 * intervals cover the truth? A dozen seeds here; tests/bench/accuracy.ts runs 200.
 */
const SEEDS = 12;

/** Bound on the median |error|, m/s: twice what 200 seeds measured. */
const medians: Record<string, number> = {
  ideal: 1.5,
  backPressure: 0.4,
  steering: 0.4,
  drag: 0.8,
  gravity: 0.4,
  frame: 0.05,
  speedGained: 0.2,
  unexplained: 1.8,
};

describe.each([
  ['altitude 5 m, speed 1 m/s, pitch 0.4°, mass in 10 kg, 5 Hz', instruments],
  ['altitude in steps of 100 m, else the same', tenths],
] as [string, Disturbance][])('%s', (_, disturbance) => {
  test('intervals cover, are no wider than they need be, and medians are small', async () => {
    const rows: Record<string, EntryError[]> = {};
    for (const name of referenceNames) {
      for (let seed = 500; seed < 500 + SEEDS; seed++) {
        const errors = await ledgerErrors(name, disturbance, seed);
        for (const entry of entryNames) {
          rows[entry] ??= [];
          rows[entry].push(errors[entry]!);
        }
      }
    }
    let covered = 0;
    let count = 0;
    for (const entry of entryNames) {
      const own = rows[entry]!;
      const hit = own.filter((r) => r.covered).length;
      covered += hit;
      count += own.length;
      // 72 draws of a 95 % event fall under 88 % once in a hundred.
      expect(hit / own.length, `${entry} covered`).toBeGreaterThan(0.88);
      for (const r of own) expect(r.half / r.ideal, `${entry} half-width`).toBeLessThan(0.005);
      const sizes = own.map((r) => Math.abs(r.error)).sort((a, b) => a - b);
      expect(quantile(sizes, 0.5), `${entry} median`).toBeLessThan(medians[entry]!);
    }
    expect(covered / count).toBeGreaterThan(0.95);
  }, 60000);
});
