import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutText, length, wrapText } from '../../src/exchange/wrapText.ts';

describe('wrapText', () => {
  test('breaks at spaces and hangs the following lines', () => {
    expect(wrapText('one two three four', 9, '  ')).toEqual(['one two', '  three', '  four']);
  });
  test('cuts a word that is longer than a line', () => {
    expect(wrapText('abcdefgh', 3)).toEqual(['abc', 'def', 'gh']);
  });
  test('an empty text has no lines', () => {
    expect(wrapText('  ', 10)).toEqual([]);
  });
  test('no line is too long and no character is lost', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 5, max: 90 }), (text, width) => {
        const lines = wrapText(text, width, '  ');
        for (const line of lines) expect(length(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      }),
    );
  });
});

test('length counts what a terminal shows: not combining marks, not half surrogates', () => {
  expect(length('e\u0301🚀')).toBe(2);
});

test('cutText keeps a short text and ends a long one in an ellipsis', () => {
  expect(cutText('short', 5)).toBe('short');
  expect(cutText('longer', 5)).toBe('long…');
});
