import { expect, test } from 'vitest';
import { intervalBand } from '../../../src/exchange/report/intervalBand.ts';

const x = (t: number) => t;
const y = (v: number) => -v;

test('goes forth along the upper edge and back along the lower, anew after a hole', () => {
  const { attributes } = intervalBand(
    [0, 1, 2, 3, 4],
    { low: [1, 1, null, 3, 3], high: [2, 2, null, 5, 5] },
    x,
    y,
    'var(--ink)',
  );
  expect(attributes.d).toBe('M0 -2L1 -2L1 -1L0 -1ZM3 -5L4 -5L4 -3L3 -3Z');
  expect(attributes.fill).toBe('var(--ink)');
});
