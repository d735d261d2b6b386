import { expect, test } from 'vitest';
import { headingText } from '../../src/exchange/headingText.ts';
import { inks } from '../../src/exchange/inks.ts';

test('a heading fills the width with its rule, remark last', () => {
  expect(headingText('Burns', '', inks(false), 12)).toBe('Burns ──────');
  expect(headingText('Burns', 'two', inks(false), 16)).toBe('Burns ────── two');
});
