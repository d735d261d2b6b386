import { expect, test } from 'vitest';
import { spread } from '../../src/attempts/spread.ts';

test('quartiles (type 7) of what is there', () => {
  expect(spread([4, null, 1, 3, 2])).toEqual({
    count: 4,
    median: 2.5,
    lower: 1.75,
    upper: 3.25,
    least: 1,
    most: 4,
  });
});

test('nothing has no middle', () => {
  expect(spread([null])).toMatchObject({ count: 0, median: null, most: null });
});
