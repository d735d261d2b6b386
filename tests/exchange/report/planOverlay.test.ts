import { expect, test } from 'vitest';
import { planOverlay } from '../../../src/exchange/report/planOverlay.ts';
import { handMadeReview } from '../handMadeReview.ts';

const values = Float64Array.of(0, 100);
const strips = {
  time_s: Float64Array.of(0, 1),
  channels: { altitude_m: { values, basis: 'derived' } },
} as const;

test('a flight without a plan has nothing behind its curves', () => {
  expect(planOverlay({ review: handMadeReview(), strips })).toEqual([]);
});

test('the plan is drawn on its own times', () => {
  const [overlay] = planOverlay({ review: handMadeReview(), strips, planStrips: strips });
  expect(overlay).toMatchObject({ name: 'as planned', channels: { altitude_m: values }, margin: null });
});
