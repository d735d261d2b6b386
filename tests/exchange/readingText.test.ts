import { expect, test } from 'vitest';
import {
  readingText,
  spanText,
  tickText,
  timeOrigin,
  timeText,
  untilText,
} from '../../src/exchange/readingText.ts';
import { handMadeReview } from './handMadeReview.ts';

test('readings are whole, below 10 with one decimal, a true minus sign', () => {
  expect([0, 3.14, 9.96, 351.4, -1084].map(readingText)).toEqual(['0', '3.1', '10', '351', '−1,084']);
});

test('times are whole seconds; ticks have decimals where the step needs them', () => {
  expect(timeText(122.6)).toBe('123 s');
  expect([1000, 0.5, 0.25, 0.1 + 0.2].map(tickText)).toEqual(['1,000', '0.5', '0.25', '0.3']);
});

test('a stretch shorter than a second is one moment', () => {
  expect(spanText(167.6, 639.2)).toBe('168 s to 639 s');
  expect(spanText(447.7, 448.4)).toBe('448 s');
});

test('time counts from lift-off only where the log holds it', () => {
  const at = (name: 'lift-off' | 'max-q') => ({
    events: [{ name, time_s: 0, planned_s: null, subject: null, altitude_m: 0, speed_m_s: 0 }],
  });
  expect(timeOrigin(at('lift-off'))).toBe('lift-off');
  expect(timeOrigin(at('max-q'))).toBe('the log’s first row');
});

test('books of a log that ends under thrust run to its end, and to no cutoff', () => {
  const review = handMadeReview();
  expect(untilText(review)).toMatch(/^to cutoff at \d+ s$/u);
  expect(untilText({ ...review, orbit: { ...review.orbit, cutoff_s: null } })).toMatch(
    /^to the end at \d+ s$/u,
  );
});
