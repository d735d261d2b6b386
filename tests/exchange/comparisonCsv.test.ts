import { expect, test } from 'vitest';
import { compareAttempts } from '../../src/attempts/compare.ts';
import { comparisonCsv } from '../../src/exchange/comparisonCsv.ts';
import { invented } from '../attempts/inventedAttempts.ts';

test('one row an attempt, as many cells as heads, texts made harmless', () => {
  const comparison = compareAttempts([
    invented({ name: '=run, "one".csv', attempt: 1, margin: 300 }),
    invented({ name: 'two.csv', attempt: 2, margin: -12.5 }),
  ]);
  const csv = comparisonCsv(comparison);
  const [head = '', first = '', second = '', end] = csv.split('\r\n');
  expect(first.startsWith(`"'=run, ""one"".csv",`)).toBe(true);
  expect(end).toBe('');
  const heads = head.split(',');
  const cells = second.split(',');
  expect(cells).toHaveLength(heads.length);
  expect(cells[heads.indexOf('margin_m_s')]).toBe('-12.5');
  expect(cells[heads.indexOf('attempt')]).toBe('2');
  expect(heads).toContain('pitchOverTime_s');
});
