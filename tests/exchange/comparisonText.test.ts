import { expect, test } from 'vitest';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { comparisonText } from '../../src/exchange/comparisonText.ts';
import { length } from '../../src/exchange/wrapText.ts';
import { invented } from '../attempts/inventedAttempts.ts';

const attempts = [1, 2, 3, 4, 5].flatMap((k) => [
  invented({ name: `tansy-${k}.csv`, attempt: k, margin: 300 + k, habits: { pitchOverAngle_deg: 10 + k } }),
  invented({
    name: `medlar-with-a-very-long-name-of-a-file-${k}.csv`,
    pilot: 'Medlar',
    attempt: k,
    margin: 100 + 20 * k,
    habits: { pitchOverAngle_deg: 5 + k },
    total: (s) => 4000 + 0.3 * s + 0.05 * Math.max(0, s - 1000),
    phases: [{ label: 'rise', cost_m_s: 150 + k }],
  }),
]);

test('80 columns, sections in their order, no colour unless asked', () => {
  const text = comparisonText(compareAttempts(attempts), { width: 80, colour: false });
  for (const line of text.split('\n')) expect(length(line)).toBeLessThanOrEqual(80);
  const heads = [
    'Tansy',
    'Medlar',
    'Habits',
    'Progress',
    'What goes with',
    'Whether they',
    'Best in',
    'Where the ways',
  ];
  const places = heads.map((head) => text.indexOf(`\n${head}`));
  expect(places.every((p) => p > 0)).toBe(true);
  expect([...places].sort((a, b) => a - b)).toEqual(places);
  expect(text.startsWith('10 attempts by pilot, held against tansy-5.csv (the greatest margin).')).toBe(true);
  expect(text).not.toContain('\u001b');
  expect(text).toContain('5 of 5 on target, margin 301 to 305 m/s');
  expect(text).toContain('guide, not as a proof');
});

test('escapes in names never reach the terminal', () => {
  const evil = [
    invented({ name: '\u001b[31mred.csv' }),
    invented({ name: 'b.csv', pilot: '\u001b]0;x\u0007Eve' }),
  ];
  const text = comparisonText(compareAttempts(evil), { width: 80, colour: false });
  expect(text).not.toContain('\u001b');
  expect(text).toContain('red.csv');
});

test('one attempt without margin still has its line', () => {
  const text = comparisonText(compareAttempts([invented({ name: 'a.csv', margin: null })]), {
    width: 80,
    colour: true,
  });
  expect(text).toContain('1 attempt by pilot; none has a margin');
  expect(text).toContain('a.csv');
});
