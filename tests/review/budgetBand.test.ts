import { describe, expect, test } from 'vitest';
import { valueAt } from '../../src/exchange/sampleAt.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Review } from '../../src/review/types.ts';
import { type Disturbance, doubtfulCard, instruments, noisyLog, tenths } from '../noisyFlights.ts';
import { type ReferenceName, readTruth, referenceNames } from '../referenceFlights.ts';
import { reviewSix } from './reviewSix.ts';

async function reviewed(name: ReferenceName, disturbance: Disturbance, seed: number): Promise<Review> {
  const log = { name: 'noisy.csv', bytes: new TextEncoder().encode(noisyLog(name, disturbance, seed)) };
  return (await reviewFlight({ log, card: { name, text: doubtfulCard(name, seed) } })).review;
}

/** Seeds per flight and instrument; eight gave 97.6 % and 98.1 %, median half-widths 2.1 and 2.4 m/s. */
const SEEDS = 4;

describe.each([
  ['a hand pilot’s instruments', instruments, 0.95],
  ['altitude in steps of 100 m', tenths, 0.95],
] as [string, Disturbance, number][])('%s', (_, disturbance, least) => {
  test('the bands of margin and projected total cover the truth along the flight, and are no wider than they need be', async () => {
    let margin = 0;
    let total = 0;
    let count = 0;
    const halves: number[] = [];
    for (const name of referenceNames) {
      const before = { margin, count };
      const { to_go, cutoff_time_s, vehicle_delta_v_vacuum } = readTruth(name);
      const moments = to_go.filter((s, k) => s.t <= cutoff_time_s && s.t !== to_go[k - 1]?.t);
      for (let seed = 300; seed < 300 + SEEDS; seed++) {
        const { curves, band } = (await reviewed(name, disturbance, seed)).budget;
        for (const s of moments) {
          const edges = (of: 'margin' | 'projectedTotal'): [number, number] => [
            valueAt(curves.time_s, band?.[of].low ?? [], s.t) ?? Number.NaN,
            valueAt(curves.time_s, band?.[of].high ?? [], s.t) ?? Number.NaN,
          ];
          const covers = ([low, high]: [number, number], exact: number) => low <= exact && exact <= high;
          const cost = s.delta_v_spent + s.delta_v_to_go;
          // No reference vehicle drops propellant: what is obtainable is the vehicle's total less what was spent.
          if (covers(edges('margin'), vehicle_delta_v_vacuum - cost)) margin++;
          if (covers(edges('projectedTotal'), cost)) total++;
          const [low, high] = edges('margin');
          halves.push((high - low) / 2);
          count++;
        }
      }
      // Moments of one flight err together, 24 seeds gave 96 to 100 %; engines' errors without the pitch's gave 87 %.
      expect((margin - before.margin) / (count - before.count), name).toBeGreaterThan(0.88);
    }
    expect(margin / count).toBeGreaterThan(least);
    expect(total / count).toBeGreaterThan(least);
    halves.sort((a, b) => a - b);
    // Snapshot of eight seeds: 2.1 and 2.4 m/s.
    expect(halves[count >> 1]).toBeLessThan(4);
  }, 120_000);
});

test('at the end of the ascent and in the coast after it the band is the budget’s own interval', async () => {
  for (const name of referenceNames) {
    const { budget, orbit } = await reviewed(name, instruments, 11);
    const { curves, band, margin, projectedTotal, deltaVToGo } = budget;
    const end = curves.time_s.indexOf(orbit.cutoff_s ?? Number.NaN);
    expect(end, name).toBeGreaterThan(0);
    expect(band?.margin.low[end]).toBeCloseTo(margin.low ?? Number.NaN, 9);
    expect(band?.margin.high[end]).toBeCloseTo(margin.high ?? Number.NaN, 9);
    expect(band?.projectedTotal.low[end]).toBeCloseTo(projectedTotal.low ?? Number.NaN, 9);
    expect(band?.toGo.high[end]).toBeCloseTo(deltaVToGo.high ?? Number.NaN, 9);
    const last = curves.time_s.length - 1;
    const width = (k: number) => (band?.margin.high[k] ?? Number.NaN) - (band?.margin.low[k] ?? Number.NaN);
    expect(width(last)).toBeCloseTo(width(end), 9);
  }
});

test('a clean log’s margin is known to less than a metre per second, a noisier log’s less well', async () => {
  const width = ({ budget: { band } }: Review): number => {
    const widths = (band?.margin.low ?? []).map((low, k) => (band?.margin.high[k] ?? 0) - (low ?? 0));
    return widths.sort((a, b) => a - b)[widths.length >> 1] ?? Number.NaN;
  };
  const clean = width((await reviewSix('osselby-short')).review);
  const noisy = width(await reviewed('osselby-short', instruments, 1));
  const noisier = width(await reviewed('osselby-short', { ...instruments, speed_m_s: 3, altitude_m: 15 }, 1));
  expect(clean).toBeLessThan(1);
  expect(noisy).toBeGreaterThan(clean);
  // Three times the noise of speed and altitude; mass and engines are as unsure as before.
  expect(noisier).toBeGreaterThan(1.4 * noisy);
});

test('without a vehicle there is a band of delta-v to go and none of the margin', async () => {
  const log = {
    name: 'noisy.csv',
    bytes: new TextEncoder().encode(noisyLog('earth-nominal', instruments, 1)),
  };
  const { budget } = (await reviewFlight({ log })).review;
  expect(budget.band?.margin).toEqual({ low: [], high: [] });
  expect(budget.band?.toGo.low).toHaveLength(budget.curves.time_s.length);
});
