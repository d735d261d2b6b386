import { expect, test } from 'vitest';
import { headersKey } from '../../src/app/headersKey.ts';

test('order, case and blanks around headers do not count', () => {
  expect(headersKey(['Time [s]', 'Alt (km)'])).toBe(headersKey([' alt (km)', 'TIME [S] ']));
});

test('other headers, other units and other counts are other logs', () => {
  const keys = [['t', 'alt'], ['t', 'alt [km]'], ['t', 'alt', 'alt'], ['t alt']].map((h) => headersKey(h));
  expect(new Set(keys).size).toBe(4);
});
