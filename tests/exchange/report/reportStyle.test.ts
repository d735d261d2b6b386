import { expect, test } from 'vitest';
import { palette } from '../../../src/exchange/report/palette.ts';
import { reportStyle } from '../../../src/exchange/report/reportStyle.ts';

test('the style sheet fetches nothing and cannot end its element', () => {
  expect(reportStyle).not.toMatch(/url\(|@import|<|src:/);
});

test('every token that it uses is one that it defines', () => {
  const defined = new Set([...Object.keys(palette), 'sans', 'serif']);
  const used = [...reportStyle.matchAll(/var\(--([a-z-]+)\)/g)].map((m) => m[1] ?? '');
  expect(used.filter((name) => !defined.has(name))).toEqual([]);
});

test('braces are balanced', () => {
  expect(reportStyle.split('{').length).toBe(reportStyle.split('}').length);
});
