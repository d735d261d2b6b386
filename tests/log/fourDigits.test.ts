import { expect, test } from 'vitest';
import { fourDigits, WORD } from '../../src/log/fourDigits.ts';

const wordOf = (text: string): number => {
  const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
  return new DataView(bytes.buffer).getInt32(0, true);
};

test('four digits are the number that they write', () => {
  for (let x = 0; x < 10 ** WORD; x++) expect(fourDigits(wordOf(String(x).padStart(WORD, '0')))).toBe(x);
});

test('any other byte in any place is no digit', () => {
  for (let place = 0; place < WORD; place++) {
    for (let byte = 0; byte < 256; byte++) {
      if (byte >= 48 && byte < 58) continue;
      for (const digits of ['0000', '9999', '1234'])
        expect(fourDigits(wordOf([...digits].with(place, String.fromCharCode(byte)).join('')))).toBe(-1);
    }
  }
});
