import { describe, expect, test } from 'vitest';
import { planOfAscent } from '../../src/plan/planOfAscent.ts';
import { bestAscent } from '../../src/refly/bestAscent.ts';
import { flyPlan } from '../../src/refly/flyPlan.ts';
import { missionOf } from './missions.ts';

const starts = [{ rise_s: 8, kick_deg: 4, pitch_deg: 20 }];

/** The plan of the best ascent, flown as a plan is. */
describe.each([
  ['osselby-nominal', false],
  ['osselby-nominal', true],
  ['osselby-short', false],
] as const)('%s, relit: %s', (name, relight) => {
  const mission = missionOf(name);
  const found = bestAscent(mission, { starts, relight });
  if (found.kind !== 'found') throw new Error(found.kind);

  test('the sparse plan is flown to the margin of the ascent', () => {
    const again = flyPlan(planOfAscent(found.plan, 'best'), mission, null);
    expect(again.end).toBe('flown');
    // Pitch to 0.05° and straight between rows. Measured: 0.4 to 0.7 m/s less.
    const lost = found.margin_m_s - again.budget.margin!.at(-1)!;
    expect(Math.abs(lost)).toBeLessThan(2);
  });

  test('the plan is sparse, and its times never fall', () => {
    const { rows } = found.plan;
    expect(rows.length).toBeLessThan(90);
    for (let i = 1; i < rows.length; i++) expect(rows[i]!.time_s).toBeGreaterThanOrEqual(rows[i - 1]!.time_s);
  });

  test('the trajectory begins on the pad and ends at the last cutoff', () => {
    const { trajectory, events } = found;
    expect(trajectory.time_s[0]).toBe(0);
    expect(trajectory.mass_kg[0]).toBeCloseTo(name === 'osselby-short' ? 62700 : 59500, 6);
    expect(trajectory.time_s.at(-1)).toBe(events.at(-1)!.time_s);
    expect(events.at(-1)!.name).toBe('cutoff');
  });
});
