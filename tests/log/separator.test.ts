import { expect, test } from 'vitest';
import { guessSeparator, isDataCell, splitLine } from '../../src/log/separator.ts';

test.each([
  [',', ['a,b,c', '1,2,3', '4,5,6']],
  [';', ['a;b', '1,5;2,5', '3,5;4,5']],
  ['\t', ['a\tb', '1,5\t2', '3 000\t4']],
  ['|', ['| a | b |', '| 1 | 2 |']],
  ['blanks', ['a b c', '1 2.5  -3', '4 5 6']],
  [',', ['a, b, c', '1, 2, 3', '4, 5, 6']],
  [',', ['t,event', '00:00:01,2', '00:00:02,3']],
])('%j parts %j', (separator, lines) => {
  expect(guessSeparator(lines)?.separator).toBe(separator);
});

test.each([[['one', 'two']], [['1', '2', '3']], [[]]])('%j is no table', (lines) => {
  expect(guessSeparator(lines)).toBeNull();
});

test('a line is cut outside of quotes', () => {
  expect(splitLine('"1,234",b,"c ""d"""', ',')).toEqual(['1,234', 'b', 'c d']);
  expect(splitLine('  1   2\t3 ', 'blanks')).toEqual(['1', '2', '3']);
});

test('data cells', () => {
  for (const cell of [
    '1',
    '-2.5e3',
    '1.234,5',
    '1 234',
    '12:30:01',
    'T+00:01:00',
    '2031-05-04T10:00:00Z',
    'NaN',
    '12.5 km',
    '45%',
  ]) {
    expect(isDataCell(cell), cell).toBe(true);
  }
  for (const cell of ['', 'altitude', 'a1', '1 2', 'Stage 2', '--x', '1.2.x'])
    expect(isDataCell(cell), cell).toBe(false);
});
