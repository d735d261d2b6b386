import { expect, test } from 'vitest';
import { attemptOf } from '../../src/attempts/attempt.ts';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { planAttemptOf } from '../../src/attempts/planAttempt.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { handMadeReview } from '../exchange/handMadeReview.ts';
import { sampleText } from '../wayDownFlights.ts';

const bytes = (name: string) => new TextEncoder().encode(sampleText(name));

test('another flight as the plan stands as what it is', async () => {
  const { review, strips, planStrips } = await reviewFlight({
    log: { name: 'ladder-medlar-2.csv', bytes: bytes('ladder-medlar-2.csv') },
    card: { name: 'card', text: sampleText('ladder-medlar-2.mission.json') },
    plan: { name: 'ladder-tansy-3.csv', bytes: bytes('ladder-tansy-3.csv') },
  });
  const plan = planAttemptOf(review, planStrips ?? null)!;
  expect(plan.name).toBe('the plan');
  // The same rocket: within a few m/s of what the planned flight itself had left (1,459 m/s).
  expect(Math.abs(plan.scores.margin_m_s.value! - 1459)).toBeLessThan(10);
  expect(plan.curve.total_m_s.at(-1)!).toBeCloseTo(plan.scores.projectedTotal_m_s.value!, 0);
  expect(plan.path.altitude_m.length).toBeGreaterThan(10);
  const comparison = compareAttempts([attemptOf(review, strips)], { reference: plan });
  expect(comparison.reference!.name).toBe('the plan');
  expect(comparison.rows.length).toBe(1);
  expect(comparison.rows[0]!.parting!.cost_m_s.value!).toBeGreaterThan(300);
}, 60_000);

test('without a plan there is none', () => {
  expect(planAttemptOf(handMadeReview())).toBeNull();
});
