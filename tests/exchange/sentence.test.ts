import { expect, test } from 'vitest';
import { sentence, unbroken } from '../../src/exchange/sentence.ts';

test('a clause becomes a sentence, once', () => {
  expect(sentence('the file holds nothing')).toBe('The file holds nothing.');
  expect(sentence('Done.')).toBe('Done.');
});

test('number and unit stay on one line', () => {
  expect(unbroken('In orbit: 160 × 158 km, 9 m/s left')).toBe(
    'In orbit: 160\u00a0×\u00a0158\u00a0km, 9\u00a0m/s left',
  );
  expect(unbroken('stage 2 met the target')).toBe('stage 2 met the target');
  expect(unbroken('Bobstay · Tansy, run 1 of 5')).toBe('Bobstay\u00a0· Tansy, run 1\u00a0of\u00a05');
});
