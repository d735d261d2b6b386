import { expect, test } from 'vitest';
import { progressOf } from '../../src/attempts/progress.ts';

test('a steady rise is told with its interval', () => {
  const progress = progressOf([1, 2, 3, 4, 5], [10, 21, 29, 42, 50]);
  expect(progress.slope!).toBeCloseTo(10, 0);
  expect(progress.text).toMatch(/^The margin grew: \+\d+\.\d m\/s an attempt \(98 % interval/u);
});

test('a fall likewise, and ups and downs are chance', () => {
  expect(progressOf([1, 2, 3, 4, 5], [50, 42, 29, 21, 10]).text).toContain('shrank: −');
  expect(progressOf([1, 2, 3, 4, 5], [10, 50, 5, 60, 8]).text).toContain('No trend beyond chance');
});

test('three attempts are too few, one is none', () => {
  expect(progressOf([1, 2, 3], [1, 2, 3]).text).toContain('too few');
  expect(progressOf([1], [1])).toMatchObject({ slope: null, attempts: 1 });
});
