import { expect, test } from 'vitest';
import { readingText, tickText, timeText } from '../../src/exchange/readingText.ts';

test('readings are whole, below 10 with one decimal, a true minus sign', () => {
  expect([0, 3.14, 9.96, 351.4, -1084].map(readingText)).toEqual(['0', '3.1', '10', '351', '−1,084']);
});

test('times are whole seconds; ticks have decimals where the step needs them', () => {
  expect(timeText(122.6)).toBe('123 s');
  expect([1000, 0.5, 0.25, 0.1 + 0.2].map(tickText)).toEqual(['1,000', '0.5', '0.25', '0.3']);
});
