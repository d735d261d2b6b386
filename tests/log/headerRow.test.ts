import { expect, test } from 'vitest';
import { findHead, isComment, isRule } from '../../src/log/headerRow.ts';

const data = [
  ['0', '1', '2'],
  ['1', '2', '3'],
];

test('the row above the data names the columns', () => {
  expect(findHead([['t', 'h', 'v'], ...data], 3)).toEqual({
    firstData: 1,
    headers: ['t', 'h', 'v'],
    units: null,
  });
});

test('lines before the names are a preamble, blank lines and rules are passed over', () => {
  const rows = [['Report'], [''], ['t', 'h', 'v'], ['---', '---', '---'], ...data];
  expect(findHead(rows, 3)).toMatchObject({ firstData: 4, headers: ['t', 'h', 'v'] });
});

test('a row of units below the names', () => {
  const rows = [['t', 'h', 'v'], ['s', '(km)', 'm/s'], ...data];
  expect(findHead(rows, 3)).toEqual({ firstData: 2, headers: ['t', 'h', 'v'], units: ['s', '(km)', 'm/s'] });
});

test('names that could be units stay names', () => {
  expect(findHead([['t', 'h', 'm'], ...data], 3)).toMatchObject({ headers: ['t', 'h', 'm'], units: null });
});

test('no names at all', () => {
  expect(findHead(data, 3)).toEqual({ firstData: 0, headers: null, units: null });
});

test('a commented header loses its mark', () => {
  expect(findHead([['# t', 'h', 'v'], ...data], 3)?.headers).toEqual(['t', 'h', 'v']);
});

test('nothing but words', () => {
  expect(
    findHead(
      [
        ['a', 'b'],
        ['c', 'd'],
      ],
      2,
    ),
  ).toBeNull();
});

test('comments and rules', () => {
  expect(['# x', '// x', '! x', '* x'].every(isComment)).toBe(true);
  expect(['x', '-1', '1'].some(isComment)).toBe(false);
  expect(isRule(['', ':---', '---:', ''])).toBe(true);
  expect(isRule(['-', '-'])).toBe(false);
});
