import { expect, test } from 'vitest';
import { unsignedCountdown } from '../../src/log/countdown.ts';

test.each([
  ['through zero', [3, 2, 1, 0, 1, 2, 3], 3],
  ['past zero between counts', [3.5, 2.5, 1.5, 0.5, 0.5, 1.5, 2.5], 4],
  ['already signed', [-3, -2, -1, 0, 1, 2], 0],
  ['rising', [0, 1, 2, 3, 4], 0],
  ['falling throughout', [5, 4, 3, 2, 1, 0], 0],
  ['falling to another pace', [3, 2, 1, 0, 100, 200, 300], 0],
  ['another flight below', [100, 90, 80, 70, 71, 72], 0],
])('%s', (_, times, rows) => {
  expect(unsignedCountdown(Float64Array.from(times))).toBe(rows);
});
