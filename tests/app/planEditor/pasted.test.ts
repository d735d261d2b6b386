import { expect, test } from 'vitest';
import { pastedTable } from '../../../src/app/planEditor/pasted.ts';

test.each(['90', '12 000', '1,200', 'cutoff (lower)', ' 45\n'])('“%s” is one entry', (text) => {
  expect(pastedTable(text)).toEqual({ kind: 'entry' });
});

test.each([
  [
    '0\t90\n10\t85\n',
    [
      ['0', '90'],
      ['10', '85'],
    ],
  ],
  [
    '0;90\r\n10;',
    [
      ['0', '90'],
      ['10', ''],
    ],
  ],
  [
    '0,90\n10,85.5',
    [
      ['0', '90'],
      ['10', '85.5'],
    ],
  ],
  ['0\t90', [['0', '90']]],
  [
    '1,200\n2,400',
    [
      ['1', '200'],
      ['2', '400'],
    ],
  ],
  ['10\n20', [['10'], ['20']]],
  ['10\t"cutoff; separation"', [['10', 'cutoff; separation']]],
])('cells of %j', (text, cells) => {
  expect(pastedTable(text)).toEqual({ kind: 'cells', cells });
});

test.each(['t [s]\tpitch\n0\t90', 'altitude (km);Throttle %\n0;100'])('%j names its columns', (text) => {
  expect(pastedTable(text)).toEqual({ kind: 'named' });
});
