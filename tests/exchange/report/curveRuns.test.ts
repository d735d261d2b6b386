import { expect, test } from 'vitest';
import { curveRuns } from '../../../src/exchange/report/curveRuns.ts';

test('a curve breaks where nothing is known; a lone point draws no line', () => {
  const runs = curveRuns(
    [0, 1, 2, 3, 4, 5],
    [1, 2, null, 4, Number.NaN, 6],
    (t) => 10 * t,
    (v) => -v,
  );
  expect(runs).toEqual([
    [
      [0, -1],
      [10, -2],
    ],
  ]);
});
