import { beforeAll, describe, expect, test } from 'vitest';
import { attemptOf } from '../../src/attempts/attempt.ts';
import { compareAttempts } from '../../src/attempts/compare.ts';
import type { Attempt } from '../../src/attempts/types.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { handMadeReview } from '../exchange/handMadeReview.ts';
import { sampleText } from '../wayDownFlights.ts';

async function sample(id: string): Promise<Attempt> {
  const { review, strips } = await reviewFlight({
    log: { name: `${id}.csv`, bytes: new TextEncoder().encode(sampleText(`${id}.csv`)) },
    card: { name: `${id}.mission.json`, text: sampleText(`${id}.mission.json`) },
  });
  return attemptOf(review, strips);
}

describe('the ladder’s runs', () => {
  let runs: Attempt[] = [];
  beforeAll(async () => {
    runs = await Promise.all(
      ['ladder-medlar-1', 'ladder-medlar-5', 'ladder-tansy-3', 'ladder-tansy-2'].map(sample),
    );
  }, 60_000);

  test('habits are what was flown', () => {
    // Kicks and cutoffs of sample-logs/ladder.ts; the log rounds pitch to 0.1° and speed to 0.1 m/s.
    const flown = [
      [5.8, -14],
      [8.9, -4],
      [10.5, -1],
      [10.9, 2],
    ] as const;
    runs.forEach((run, k) => {
      // The path leans on after the kick: up to half a degree in ten seconds.
      expect(Math.abs(run.habits.pitchOverAngle_deg! - flown[k]![0])).toBeLessThan(0.5);
      expect(Math.abs(run.habits.cutoffError_m_s! - flown[k]![1])).toBeLessThan(0.2);
      expect(run.habits.angleOfAttackInAir_deg!).toBeLessThan(0.2);
      expect(run.habits.thrustToWeightAtMaxQ!).toBeGreaterThan(2);
    });
  });

  test('phases add up to the rise of the projected total', () => {
    for (const run of runs) {
      const { total_m_s } = run.curve;
      const rise = total_m_s.at(-1)! - total_m_s[0]!;
      const sum = run.phases.reduce((s, p) => s + p.cost_m_s, 0);
      expect(Math.abs(sum - rise)).toBeLessThan(0.5);
    }
  });

  test('curves run on rising delta-v spent, end at the projected total, and stay small', () => {
    for (const run of runs) {
      const { spent_m_s, total_m_s } = run.curve;
      for (let k = 1; k < spent_m_s.length; k++) expect(spent_m_s[k]!).toBeGreaterThan(spent_m_s[k - 1]!);
      expect(total_m_s.at(-1)!).toBeCloseTo(run.scores.projectedTotal_m_s.value!, 3);
      expect(JSON.stringify(run).length).toBeLessThan(12_000);
    }
  });

  test('the lofted run parts from the best after pitch-over, and costs hundreds', () => {
    const c = compareAttempts(runs);
    expect(c.reference!.name).toBe('ladder-tansy-3.csv');
    const lofted = c.rows.find((r) => r.name === 'ladder-medlar-1.csv')!;
    expect(lofted.parting!.after).toBe('pitch-over');
    const whole =
      lofted.scores.projectedTotal_m_s.value! -
      c.rows.find((r) => r.name === 'ladder-tansy-3.csv')!.scores.projectedTotal_m_s.value!;
    expect(lofted.parting!.cost_m_s.value! / whole).toBeGreaterThan(0.8);
    expect(lofted.parting!.cost_m_s.value! / whole).toBeLessThan(1.05);
  });
});

test('a review without strips is compared by what it holds itself', () => {
  const attempt = attemptOf(handMadeReview());
  expect(attempt.name).toBe('bobstay-medlar-4.csv');
  expect(attempt.scores.margin_m_s.value).toBe(-361.3);
  expect(attempt.habits.thrustToWeightAtMaxQ).toBeNull();
  expect(attempt.path.altitude_m).toEqual([]);
});

test('an ascent that was broken off lends its margin to no comparison', async () => {
  // The margin falls along every ascent: a log cut short would always be the best.
  const whole = sampleText('ladder-tansy-3.csv');
  const [header, ...rows] = whole.split('\n');
  const cut = rows.filter((r) => r !== '' && Number.parseFloat(r) <= 60);
  const card = { name: 'x.mission.json', text: sampleText('ladder-tansy-3.mission.json') };
  const [flown, lost] = await Promise.all(
    [
      { name: 'whole.csv', text: whole },
      { name: 'lost.csv', text: [header, ...cut].join('\n') },
    ].map(async ({ name, text }) => {
      const { review, strips } = await reviewFlight({
        log: { name, bytes: new TextEncoder().encode(text) },
        card,
      });
      return { review, attempt: attemptOf(review, strips) };
    }),
  );
  expect(lost!.review.verdict.code).toBe('suborbital-lost-in-flight');
  expect(lost!.review.budget.margin.value!).toBeGreaterThan(flown!.review.budget.margin.value!);
  const compared = compareAttempts([lost!.attempt, flown!.attempt]);
  expect(compared.reference).toEqual({ name: 'whole.csv', why: 'the greatest margin' });
  expect(lost!.attempt.scores.margin_m_s).toMatchObject({ value: null, basis: 'unavailable' });
  expect(compared.cautions.join(' ')).toContain('1 of 2 attempts has no margin at the end of an ascent');
});
