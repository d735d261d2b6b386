import { expect, test } from 'vitest';
import { ascentSpan, wholeSpan } from '../../../src/exchange/report/flightSpan.ts';
import { handMadeReview } from '../handMadeReview.ts';

function flight(end_s: number) {
  const strips = { time_s: Float64Array.of(-20, 0, end_s), channels: {} };
  return { review: handMadeReview(), strips };
}

test('the whole log from its first row to its last', () => {
  expect(wholeSpan(flight(600))).toEqual({ start_s: -20, end_s: 600 });
  const bare = { review: handMadeReview(), strips: { time_s: new Float64Array(0), channels: {} } };
  expect(wholeSpan(bare)).toEqual({ start_s: 0, end_s: 539.7 });
});

test('the ascent where it is a small part of the log, the whole log where it is most of it', () => {
  expect(ascentSpan(flight(600))).toEqual({ start_s: -20, end_s: 600 });
  const { start_s, end_s } = ascentSpan(flight(6000));
  // 2 % of 494.3 s before, 10 % after.
  expect(start_s).toBeCloseTo(-9.886, 6);
  expect(end_s).toBeCloseTo(543.73, 6);
});
