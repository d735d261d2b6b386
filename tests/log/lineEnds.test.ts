import fc from 'fast-check';
import { expect, test } from 'vitest';
import { unixLineEnds } from '../../src/log/lineEnds.ts';

const encode = (text: string) => new TextEncoder().encode(text);

test('CR LF and CR become LF', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('a', '\r', '\n', '\r\n', '°')), (parts) => {
      const text = parts.join('');
      expect(unixLineEnds(encode(text))).toEqual(encode(text.replace(/\r\n?/gu, '\n')));
    }),
    { seed: 20_310_504 },
  );
});

test('bytes without CR stay the same array', () => {
  const bytes = encode('a\nb\n');
  expect(unixLineEnds(bytes)).toBe(bytes);
});
