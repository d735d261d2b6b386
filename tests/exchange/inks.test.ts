import { expect, test } from 'vitest';
import { inks } from '../../src/exchange/inks.ts';

test('colours wrap the text and end where they began; without colour the text is untouched', () => {
  expect(inks(true).alarm('x')).toBe('\u001b[31mx\u001b[39m');
  expect(inks(true).strong('')).toBe('');
  expect(inks(false).strong('x')).toBe('x');
});
