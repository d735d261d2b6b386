import { expect, test } from 'vitest';
import { suggestion } from '../src/suggest.ts';

test('the nearest name is offered, whatever its case', () => {
  expect(suggestion('dryMas_kg', ['payload_kg', 'dryMass_kg'])).toBe('; did you mean “dryMass_kg”?');
  expect(suggestion('ALTITDE', ['altitude', 'attitude'])).toBe('; did you mean “altitude”?');
  expect(suggestion('erth', ['earth', 'moon', 'mars'])).toBe('; did you mean “earth”?');
});

test('a swap of neighbours counts as one slip', () => {
  expect(suggestion('kgn', ['kng'])).toBe('; did you mean “kng”?');
});

test('nothing is offered where nothing is near', () => {
  expect(suggestion('jupiter', ['earth', 'moon', 'mars'])).toBe('');
  expect(suggestion('', ['a'])).toBe('');
  expect(suggestion('word', [])).toBe('');
});
