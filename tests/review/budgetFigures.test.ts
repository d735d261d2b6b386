import { describe, expect, test } from 'vitest';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Figure } from '../../src/review/types.ts';
import { cutLog, type ReferenceName, readCardText, referenceNames } from '../referenceFlights.ts';

/** Budget of a reference flight's six channels, with the card's launch site or without. */
async function budgetOf(name: ReferenceName, placed: boolean) {
  const card = JSON.parse(readCardText(name));
  if (!placed) delete card.site;
  const { review } = await reviewFlight({
    log: { name: 'x.csv', bytes: new TextEncoder().encode(cutLog(name)) },
    card: { name: 'card', text: JSON.stringify(card) },
  });
  return review.budget;
}

const reach = (f: Figure): { down: number; up: number } => ({
  down: f.value! - f.low!,
  up: f.high! - f.value!,
});

describe.each(referenceNames)('%s', (name) => {
  test('margin and projected total are no surer than the delta-v to go that they are made of', async () => {
    const { deltaVToGo, margin, projectedTotal, shortfall } = await budgetOf(name, true);
    const rounding = 1e-9;
    expect(reach(margin).down).toBeGreaterThanOrEqual(reach(deltaVToGo).up - rounding);
    expect(reach(margin).up).toBeGreaterThanOrEqual(reach(deltaVToGo).down - rounding);
    expect(reach(projectedTotal).up).toBeGreaterThanOrEqual(reach(deltaVToGo).up - rounding);
    expect(shortfall.high).toBeCloseTo(Math.max(0, -margin.low!), 9);
  });

  test('an unknown site moves them as it moves the delta-v to go', async () => {
    const { deltaVToGo, deltaVRemaining, margin, projectedTotal, deltaVSpent } = await budgetOf(name, false);
    const open = deltaVToGo.assumptions![0]!;
    expect(margin.assumptions![0]!.what).toBe(open.what);
    expect(margin.assumptions![0]!.low).toBeCloseTo(deltaVRemaining.value! - open.high, 9);
    expect(projectedTotal.assumptions![0]!.high).toBeCloseTo(deltaVSpent.value! + open.high, 9);
  });

  test('what a clean log’s coast does to the delta-v to go is not taken for its error', async () => {
    // Falling back, each second of it costs: on osselby-short 10 m/s in the minute after cutoff.
    expect(reach((await budgetOf(name, true)).deltaVToGo).up).toBeLessThan(1);
  });
});
