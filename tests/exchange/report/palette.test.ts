import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fonts, palette } from '../../../src/exchange/report/palette.ts';

const sheet = readFileSync('src/app/theme.css', 'utf8');

test('the report has the colours of the page’s light theme, every one and no other', () => {
  const block = /:root\[data-theme="light"\] \{([^}]*)\}/.exec(sheet)?.[1] ?? '';
  const tokens = [...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1], m[2]]);
  expect(Object.fromEntries(tokens)).toEqual(palette);
});

test('and its typefaces', () => {
  const plain = sheet.replace(/\s+/g, ' ');
  for (const [name, family] of Object.entries(fonts)) expect(plain).toContain(`--${name}: ${family};`);
});
