import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asciiText, comments, keyword, nameValue } from '../../../src/exchange/ccsds/kvn.ts';

test('keywords line up and carry their unit', () => {
  expect(keyword('GM', '398600.4', 'km**3/s**2')).toBe('GM                = 398600.4 [km**3/s**2]');
  expect(keyword('ARG_OF_PERICENTER', '1', 'deg')).toBe('ARG_OF_PERICENTER = 1 [deg]');
});

test('names are upper case, UNKNOWN where nothing is left', () => {
  expect(nameValue('Bobstay №2')).toBe('BOBSTAY NO2');
  expect(nameValue(' \u200b ')).toBe('UNKNOWN');
});

test('known signs are spelled, marks are taken off letters', () => {
  expect(asciiText('Österreich − 5° ± 2 µs “x”')).toBe('Osterreich - 5 deg +/- 2 us "x"');
});

test('whatever the text, comments are printable ASCII lines of a legal length', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 600 }), (text) => {
      for (const line of comments(text)) expect(line).toMatch(/^COMMENT [ -~]{1,246}$/);
    }),
  );
});
