import { describe, expect, test } from 'vitest';
import { guessNumberStyle, isMissingMark, readNumber } from '../../src/log/numbers.ts';

const german = { decimal: ',', group: '.' } as const;

describe('readNumber', () => {
  test.each([
    ['12.5', 12.5],
    [' +3 ', 3],
    ['-1.5e-3', -0.0015],
    ['.5', 0.5],
    ['5.', 5],
    ['−7,', Number.NaN],
    ['−7', -7],
    ['1.5D+03', 1500],
    ['1e999', Number.NaN],
    ['-1e999', Number.NaN],
    ['0x10', Number.NaN],
    ['0b1', Number.NaN],
    ['Infinity', Number.NaN],
    ['', Number.NaN],
    ['   ', Number.NaN],
    ['12 m', Number.NaN],
    ['1,234', Number.NaN],
    ['9'.repeat(70), 1e70],
  ])('%j is %d', (cell, value) => {
    expect(readNumber(cell)).toBe(value);
  });

  test.each([
    ['1,5', 1.5],
    ['1.234,5', 1234.5],
    ['1.234.567', 1234567],
    ['-0,25', -0.25],
    ['1.5', Number.NaN],
    ['12', 12],
  ])('with decimal comma %j is %d', (cell, value) => {
    expect(readNumber(cell, german)).toBe(value);
  });

  test.each([
    ["1'234'567.5", "'", 1234567.5],
    ['12 345', ' ', 12345],
    ['12\u202f345.6', ' ', 12345.6],
    ['1,23', ',', Number.NaN],
    ['1,234,567', ',', 1234567],
  ] as const)('%j with thousands marked by %j is %d', (cell, group, value) => {
    expect(readNumber(cell, { decimal: '.', group })).toBe(value);
  });
});

describe('guessNumberStyle', () => {
  test.each([
    ['points alone', ['1.5', '200', '-3.25'], '.', ''],
    ['decimal commas', ['1,5', '200', '-3,25'], ',', ''],
    ['both, comma last', ['1.234,5', '3,5'], ',', '.'],
    ['both, point last', ['1,234.5', '3.5'], '.', ','],
    ['thousands beside small numbers', ['1,234', '999', '12'], '.', ','],
    ['three decimals throughout', ['1,234', '0,999', '12,000'], ',', ''],
    ['two marks in one number', ['1,234,567', '12'], '.', ','],
    ['blanks', ['1 234', '12', '22 345.5'], '.', ' '],
    ['apostrophes', ["1'234", '12'], '.', "'"],
    ['nothing', ['a', ''], '.', ''],
  ] as const)('%s', (_, cells, decimal, group) => {
    expect(guessNumberStyle(cells)).toEqual({ decimal, group });
  });
});

test('missing marks are told from unreadable cells', () => {
  expect(['', ' ', 'NaN', 'N/A', '--', 'null', '#N/A'].every(isMissingMark)).toBe(true);
  expect(['oops', '0', '-1', 'nano'].some(isMissingMark)).toBe(false);
});
