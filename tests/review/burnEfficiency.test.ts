import { expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { doubtfulCard, instruments, noisyLog } from '../noisyFlights.ts';
import { referenceNames } from '../referenceFlights.ts';
import { reviewSix } from './reviewSix.ts';

const SEEDS = 5;

test('the burns’ efficiency and the waste in kilograms carry intervals that hold what the clean log gives', async () => {
  let covered = 0;
  let count = 0;
  const halves: number[] = [];
  for (const name of referenceNames) {
    const clean = (await reviewSix(name)).review;
    for (let seed = 500; seed < 500 + SEEDS; seed++) {
      const log = { name: 'noisy.csv', bytes: new TextEncoder().encode(noisyLog(name, instruments, seed)) };
      const { review } = await reviewFlight({ log, card: { name, text: doubtfulCard(name, seed) } });
      review.burns.forEach(({ efficiency: f }, k) => {
        const known = clean.burns[k]!.efficiency.value!;
        count++;
        if (f.low! <= known && known <= f.high!) covered++;
        halves.push((f.high! - f.low!) / 2);
      });
      const { deltaV_m_s, propellant_kg } = review.waste!.totals.total;
      const perMetre = propellant_kg.value! / deltaV_m_s.value!;
      const reach = (propellant_kg.high! - propellant_kg.low!) / (deltaV_m_s.high! - deltaV_m_s.low!);
      // The end's error is worth what a metre per second is at the end, where the vehicle is lightest.
      expect(reach).toBeGreaterThan(0);
      expect(reach).toBeLessThan(perMetre);
    }
  }
  // Measured: 58 of 60, half-widths of 0.0008 in the middle.
  expect(covered / count).toBeGreaterThan(0.9);
  halves.sort((a, b) => a - b);
  expect(halves[count >> 1]).toBeLessThan(0.002);
}, 120_000);
