import { expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Figure, Review } from '../../src/review/types.ts';
import { doubtfulCard, instruments, noisyLog } from '../noisyFlights.ts';
import { cutLog, type ReferenceName, readCardText, readTruth } from '../referenceFlights.ts';

/** A review of the flight with its pitch column `off` degrees too high. */
async function reviewed(log: string, card: string, off: number): Promise<Review> {
  const text = log
    .split('\n')
    .map((line, i) => {
      const cells = line.split(',');
      return i === 0 ? line : [...cells.slice(0, 5), Number(cells[5]) + off].join(',');
    })
    .join('\n');
  const { review } = await reviewFlight({
    log: { name: 'log.csv', bytes: new TextEncoder().encode(text) },
    card: { name: 'card.json', text: card },
  });
  return review;
}

/** The card without its engines' specific impulse, so that the log alone must tell it. */
function silentCard(name: ReferenceName): string {
  const card = JSON.parse(readCardText(name));
  for (const stage of card.vehicle.stages) delete stage.ispVacuum_s;
  return JSON.stringify(card);
}

const biasOf = (f: Figure) => f.assumptions?.find((a) => a.what === 'pitch bias');

/** What the interval and the pitch's bias reach together. */
function reach(f: Figure): readonly [number, number] {
  const bias = biasOf(f);
  return [Math.min(f.low!, bias?.low ?? f.low!), Math.max(f.high!, bias?.high ?? f.high!)];
}

const isCovered = (f: Figure, truth: number): boolean => reach(f)[0] <= truth && truth <= reach(f)[1];

/** Specific impulses, ideal and steering of a review with the truth of each. */
function againstTruth(name: ReferenceName, { vehicle, ledger }: Review): (readonly [Figure, number])[] {
  const stages: { ispVacuum_s: number }[] = JSON.parse(readCardText(name)).vehicle.stages;
  const { ideal, steering } = readTruth(name).ground;
  return [
    ...vehicle!.stages.map(({ isp_s }, s) => [isp_s, stages[s]!.ispVacuum_s] as const),
    [ledger.ground.ideal, ideal!],
    [ledger.ground.steering, steering!],
  ];
}

const flights = ['osselby-nominal', 'osselby-short', 'earth-nominal'] as const;

test.each(flights)(
  '%s, pitch biased: corrected by what was found, the figures reach the truth',
  async (name) => {
    for (const off of [2, -2]) {
      const review = await reviewed(cutLog(name, undefined, 5), silentCard(name), off);
      const pairs = againstTruth(name, review);
      expect(pairs.map(([f, truth]) => isCovered(f, truth))).toEqual(pairs.map(() => true));
      // The upper stage is hit hardest: its own interval lies far from the truth.
      const [upper, truth] = pairs[1]!;
      expect(upper.low! > truth || upper.high! < truth).toBe(true);
      for (const f of [upper, review.ledger.ground.ideal, review.ledger.inertial.steering])
        expect(biasOf(f)).toBeDefined();
    }
  },
);

// Measured: 60 of 60.
test('noisy flights with doubtful cards and a biased pitch: nine figures in ten reach the truth', async () => {
  const hits: boolean[] = [];
  for (const [k, name] of flights.entries()) {
    for (let seed = 0; seed < 5; seed++) {
      const log = noisyLog(name, instruments, 40 * k + seed);
      const review = await reviewed(log, doubtfulCard(name, 40 * k + seed), seed % 2 === 0 ? 2 : -2);
      hits.push(...againstTruth(name, review).map(([f, truth]) => isCovered(f, truth)));
    }
  }
  expect(hits.filter(Boolean).length / hits.length).toBeGreaterThanOrEqual(0.9);
});

test('a clean flight, and a noisy one without bias, carry no such assumption', async () => {
  const name = 'osselby-nominal';
  for (const [log, card] of [
    [cutLog(name, undefined, 5), readCardText(name)],
    [cutLog(name, undefined, 5), silentCard(name)],
    [noisyLog(name, instruments, 3), doubtfulCard(name, 3)],
  ] as const)
    expect(JSON.stringify(await reviewed(log, card, 0))).not.toContain('"pitch bias"');
});
