import { beforeAll, describe, expect, test } from 'vitest';
import { attemptOf } from '../../src/attempts/attempt.ts';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { type StitchFlight, stitchedBest } from '../../src/attempts/stitchedBest.ts';
import { stitchGroups, stitchNames } from '../../src/attempts/stitchGroups.ts';
import type { Attempt, Stitched } from '../../src/attempts/types.ts';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import type { ReviewRequest } from '../../src/review/readRequest.ts';
import { readRequest } from '../../src/review/readRequest.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { sampleText } from '../wayDownFlights.ts';
import { invented } from './inventedAttempts.ts';

function requestFor(file: string): ReviewRequest {
  const card = file.replace(/\.[^.]*$/u, '.mission.json');
  return {
    log: { name: file, bytes: new TextEncoder().encode(sampleText(file)) },
    card: { name: card, text: sampleText(card) },
  };
}

async function attempt(file: string): Promise<Attempt> {
  const { review, strips } = await reviewFlight(requestFor(file));
  return attemptOf(review, strips);
}

async function flight(file: string): Promise<StitchFlight> {
  const { log, mission } = await readRequest(requestFor(file));
  return { name: file, flight: buildFlight(log, mission) };
}

function flown(stitched: Stitched): Extract<Stitched, { kind: 'flown' }> {
  if (stitched.kind !== 'flown') throw new Error(stitched.text);
  return stitched;
}

describe('the ladder’s pilots', () => {
  const pilots = ['medlar', 'tansy', 'teasel'];
  let results: Extract<Stitched, { kind: 'flown' }>[] = [];
  beforeAll(async () => {
    const files = pilots.flatMap((p) => [1, 2, 3, 4, 5].map((k) => `ladder-${p}-${k}.csv`));
    const comparison = compareAttempts(await Promise.all(files.map(attempt)));
    results = await Promise.all(
      stitchGroups(comparison).map(async (g) =>
        flown(stitchedBest(comparison, g.name, await Promise.all(stitchNames(g).map(flight)))),
      ),
    );
  }, 120_000);

  test('each is stitched of the phases that were cheapest', () => {
    expect(results.map((r) => r.group)).toEqual(['Medlar', 'Tansy', 'Teasel']);
    for (const r of results)
      expect(r.phases.map((p) => p.label)).toEqual(['rise', 'turn, lower', 'coast', 'powered, upper']);
    // Snapshot of whose they are; Medlar's rises are too alike for it.
    const [, turn, , upper] = results[0]!.phases;
    expect([turn!.name, upper!.name]).toEqual(['ladder-medlar-5.csv', 'ladder-medlar-5.csv']);
  });

  test('the phases flown add up to the projected total’s rise, and the margin is what is left of it', () => {
    // One rocket and one target: what is obtainable at lift-off less the projected total is the margin, and the
    // projected total at lift-off is the same for all; the logs’ mass is in steps of 10 kg (some 0.5 m/s).
    const base = (r: (typeof results)[number]) =>
      r.asFlown_m_s + r.phases.reduce((sum, p) => sum + p.stitched_m_s, 0);
    for (const r of results) expect(Math.abs(base(r) - base(results[0]!))).toBeLessThan(1);
  });

  test('phases that fit make the pilot’s best attempt better; phases that do not fit are told', () => {
    const [medlar, tansy, teasel] = results as [
      (typeof results)[0],
      (typeof results)[0],
      (typeof results)[0],
    ];
    expect(medlar.asFlown_m_s).toBeGreaterThan(medlar.best!.margin_m_s);
    expect(medlar.phases.every((p) => p.joins)).toBe(true);
    expect(medlar.text).toContain('They join');
    // The cheapest turns of Tansy and Teasel end low and fast: their upper stages were steered for another state.
    for (const r of [tansy, teasel]) {
      expect(r.asFlown_m_s).toBeLessThan(r.best!.margin_m_s);
      const [last] = r.phases.slice(-1);
      expect(last!.joins).toBe(false);
      expect(last!.gap!.altitude_m).toBeLessThan(-4000);
      expect(r.text).toContain(`They do not join everywhere: powered, upper of ${last!.name}`);
    }
    // Steered anew the last stage makes up for what it can, and reaches the target.
    for (const r of results) {
      expect(r.steered_m_s).toBeGreaterThanOrEqual(r.asFlown_m_s);
      expect(r.steeredToGo_m_s).toBeLessThan(0.1);
    }
  });
});

test.each([
  'ladder-tansy-3.csv',
  'ladder-medlar-4.csv',
  'bobstay-tansy-1.csv',
  'fairlead-tansy-1.json',
  'homeward-tansy-1.csv',
])(
  '%s stitched with itself is that flight',
  async (file) => {
    const own = await attempt(file);
    // Twice the same, so that there is something to choose from; the second is never the cheaper.
    const comparison = compareAttempts([own, { ...own, name: 'the same' }]);
    const r = flown(stitchedBest(comparison, comparison.groups[0]!.name, [await flight(file)]));
    // Measured over the five: margin 0.19, phases 1.1 (pitch-over falls between rows), 21 m, 0.12 m/s at the joins.
    expect(Math.abs(r.asFlown_m_s - own.scores.margin_m_s.value!)).toBeLessThan(0.4);
    for (const p of r.phases) {
      expect(p.joins).toBe(true);
      expect(Math.abs(p.stitched_m_s - p.own_m_s)).toBeLessThan(2);
      if (p.gap === null) continue;
      expect(Math.abs(p.gap.altitude_m)).toBeLessThan(40);
      expect(Math.abs(p.gap.speed_m_s)).toBeLessThan(0.3);
      expect(Math.abs(p.gap.spent_m_s)).toBeLessThan(0.4);
      expect(Math.abs(p.gap.time_s)).toBeLessThan(0.01);
    }
    // Steered anew it can be no worse than as flown, but for the search's own step.
    expect(r.steered_m_s).toBeGreaterThan(r.asFlown_m_s - 0.05);
  },
  60_000,
);

test('what cannot be stitched says why', async () => {
  const alone = compareAttempts([invented({ name: 'a', phases: [{ label: 'rise', cost_m_s: 1 }] })]);
  expect(stitchGroups(alone)).toEqual([]);
  const own = await attempt('thimble-teasel-1.csv');
  const single = compareAttempts([own, { ...own, name: 'the same' }]);
  const [group] = stitchGroups(single);
  const told = stitchedBest(single, group!.name, [await flight('thimble-teasel-1.csv')]);
  expect(told).toMatchObject({ kind: 'unavailable', group: 'Teasel' });
  expect(told.text).toMatch(/two stages or more|cannot be flown again/u);
  expect(stitchedBest(single, 'Teasel', []).text).toContain('no flight was given');
});
