import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

const sought = (name: ReferenceName, causes = true) =>
  reviewFlight({
    log: { name: `${name}.csv`, bytes: new TextEncoder().encode(cutLog(name)) },
    card: { name: 'card', text: readCardText(name) },
    causes,
  });

describe('osselby-short', () => {
  test('the moment by re-flying lies before the margin’s; each change reaches orbit, nine tenths of it do not', async () => {
    const { review } = await sought('osselby-short');
    const why = review.whyNot!;
    const floor = review.mission.orbitFloor_m;
    expect(why.latest_s).toBe(review.budget.lostAt_s);
    expect(why.outOfReach_s!).toBeLessThan(why.latest_s!);
    expect(why.outOfReach_s!).toBeGreaterThan(80);
    expect(why.changes.length).toBeGreaterThanOrEqual(2);
    for (const change of why.changes) {
      expect(change.periapsisAltitude_m, change.kind).toBeGreaterThanOrEqual(floor);
      if (change.nineTenthsPeriapsisAltitude_m !== null)
        expect(change.nineTenthsPeriapsisAltitude_m, change.kind).toBeLessThan(floor);
    }
    expect(why.changes[0]!.nineTenthsPeriapsisAltitude_m).not.toBeNull();
    expect(why.text).toContain(why.changes[0]!.text);
  });
});

test('osselby-early-cutoff: orbit was in reach to the end, and a longer burn is the change', async () => {
  const { review } = await sought('osselby-early-cutoff');
  const why = review.whyNot!;
  expect(why.outOfReach_s).toBeNull();
  const [change, ...others] = why.changes;
  expect(others).toEqual([]);
  expect(change!.kind).toBe('burn-longer');
  // osselby-nominal is the same flight burnt 5.62 s longer, to 160 km; the floor of 110 km comes sooner.
  expect(change!.amount).toBeGreaterThan(3.5);
  expect(change!.amount).toBeLessThan(5.62);
  expect(change!.periapsisAltitude_m).toBeGreaterThanOrEqual(review.mission.orbitFloor_m);
  expect(change!.nineTenthsPeriapsisAltitude_m!).toBeLessThan(review.mission.orbitFloor_m);
  expect(review.findings[0]!.code).toBe('cutoff-early');
});

test('a flight in orbit is not asked', async () => {
  expect((await sought('osselby-nominal')).review.whyNot).toBeNull();
});

test('nor is a flight whose causes are not sought', async () => {
  const { review } = await sought('osselby-short', false);
  expect(review.whyNot).toBeNull();
  expect(review.causesSought).toBe(false);
});
