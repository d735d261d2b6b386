import { describe, expect, test } from 'vitest';
import { textTable } from '../../src/exchange/textTable.ts';

describe('textTable', () => {
  test('lines decimal points up under a right-aligned head', () => {
    const lines = textTable(
      [{ align: 'left' }, { align: 'point' }],
      [
        ['', 'm/s'],
        ['ideal', '5,541'],
        ['frame', '−8.7'],
      ],
      (text) => text,
    );
    expect(lines).toEqual(['           m/s', 'ideal  5,541', 'frame     −8.7']);
  });
  test('a point column without decimals is right-aligned', () => {
    expect(textTable([{ align: 'point' }], [['1'], ['100']])).toEqual(['  1', '100']);
  });
  test('ink is laid on after padding, so that widths do not change', () => {
    const marked = textTable(
      [{ align: 'right', ink: (t) => `<${t}>` }, { align: 'left' }],
      [
        ['1', 'a'],
        ['22', 'b'],
      ],
    );
    expect(marked).toEqual(['< 1>  a', '<22>  b']);
  });
});
