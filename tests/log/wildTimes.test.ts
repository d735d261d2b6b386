import { expect, test } from 'vitest';
import { wildTimes } from '../../src/log/wildTimes.ts';

test.each([
  ['in order', [0, 1, 2, 3, 4], []],
  ['a late packet', [0, 1, 3, 2, 4], []],
  ['a stamp far ahead', [0, 1, 9999, 2, 3], [2]],
  ['two stamps far behind', [100, 101, -5, 102, -5, 103], [2, 4]],
  ['another flight', [100, 101, 102, 0, 1, 2], []],
  ['a gap', [0, 1, 500, 501, 502], []],
])('%s', (_, times, found) => {
  expect(wildTimes(Float64Array.from(times), 1)).toEqual(found);
});
