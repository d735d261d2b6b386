import { expect, test } from 'vitest';
import { choiceFor, columnName, sureness, withChoice } from '../../../src/app/columns/choose.ts';

const columns = ['t', 'alt', 'Alt ', 'v'].map((header) => ({ header }));

test('a column is named by its header, or by its number where others have the same', () => {
  expect(columns.map((_, i) => columnName(columns, i))).toEqual(['t', '#2', '#3', 'v']);
});

test('a channel goes to one column, and a column to one channel', () => {
  const first = withChoice(columns, 1, [], 'altitude', 'ft');
  expect(first).toEqual([{ channel: 'altitude', column: '#2', unit: 'ft' }]);
  expect(withChoice(columns, 2, first, 'altitude', null)).toEqual([
    { channel: 'altitude', column: '#3', unit: null },
  ]);
  expect(withChoice(columns, 1, first, 'downrange', null)).toEqual([
    { channel: 'downrange', column: '#2', unit: null },
  ]);
});

test('several columns can be left alone; a choice can be taken back', () => {
  const none = withChoice(columns, 3, withChoice(columns, 1, [], 'none', null), 'none', null);
  expect(none.map((c) => c.column)).toEqual(['#2', 'v']);
  expect(choiceFor(columns, 3, none)?.channel).toBe('none');
  expect(withChoice(columns, 3, none, null, null).map((c) => c.column)).toEqual(['#2']);
});

test('how sure a reading is stands in words and a figure', () => {
  expect(sureness({ confidence: 0.95, unitFrom: 'header' })).toBe('sure, 95 %');
  expect(sureness({ confidence: 0.35, unitFrom: 'inferred' })).toBe('unsure, 35 %: look at it');
  expect(sureness({ confidence: 1, unitFrom: 'told' })).toBe('as you said');
});
