import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainText } from '../../src/exchange/plainText.ts';

describe('plainText', () => {
  test.each([
    ['colour (CSI)', 'a\u001b[31mred\u001b[0m', 'ared'],
    ['colour (8-bit CSI)', 'a\u009b31mred', 'ared'],
    ['window title (OSC, ended by BEL)', 'a\u001b]0;title\u0007b', 'ab'],
    ['link (OSC 8, ended by ST)', 'a\u001b]8;;http://x\u001b\\b', 'ab'],
    ['an unterminated control string', 'a\u001b]52;c;AAAA', 'a'],
    ['a device control string', 'a\u001bPq#0\u001b\\b', 'ab'],
    ['clear screen and home', '\u001b[2J\u001b[Hx', 'x'],
    ['full reset', '\u001bcx', 'x'],
    ['bell, backspace, delete', 'a\u0007\b\u007fb', 'ab'],
    ['line breaks and tabs', 'a\r\nb\tc\u2028d', 'a b c d'],
    ['direction overrides', 'a\u202egpj.exe\u2066', 'agpj.exe'],
    ['a byte-order mark', '\ufeffTime', 'Time'],
  ])('removes %s', (_name, text, expected) => {
    expect(plainText(text)).toBe(expected);
  });

  test('leaves ordinary text of any script alone', () => {
    const text = 'Höhe [m] · высота · 高度 · 🚀 → −12 °';
    expect(plainText(text)).toBe(text);
  });

  test('never lets a control character through, whatever the text', () => {
    const piece = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom('\u001b', '\u001b[', '\u001b]', '\u009b', '\u0007', '\u001b\\', ';', '31m'),
    );
    fc.assert(
      fc.property(fc.array(piece), (pieces) => {
        expect(plainText(pieces.join(''))).not.toMatch(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u);
      }),
    );
  });
});
