import { expect, test } from 'vitest';
import { curveText, entryText, numberOf, readCurve, readEntry } from '../../../src/app/card/entries.ts';

test.each([
  ['7.6e6', 7.6e6],
  ['400 000', 400_000],
  ['1,200', 1200],
  ['0,35', 0.35],
  ['−12', -12],
  ['.5', 0.5],
])('“%s” is a number', (entry, value) => {
  expect(numberOf(entry)).toBe(value);
});

test.each(['', 'twelve', '1.2.3', '1,2,3', '0x10', 'Infinity'])('“%s” is none', (entry) => {
  expect(numberOf(entry)).toBeNull();
});

test('an entry is read in the unit of its field, or in its own', () => {
  expect(readEntry('160', 1e-3)).toBe(160_000);
  expect(readEntry('660 kN', 1e-3, 'force')).toBe(660_000);
  // NIST SP 811: one foot is 0.3048 m exactly.
  expect(readEntry('1,000 ft', 1e-3, 'length')).toBe(304.8);
  expect(readEntry('much', 1)).toBe('much');
  expect(readEntry(' ', 1)).toBeUndefined();
  expect(entryText(160_000, 1e-3)).toBe('160');
});

test('curves are pairs between semicolons', () => {
  const nodes = [
    [0, 0.3],
    [1.05, 0.55],
  ];
  expect(readCurve('0 0.3; 1.05 0.55')).toEqual(nodes);
  expect(curveText(nodes)).toBe('0 0.3; 1.05 0.55');
  expect(readCurve('0.4')).toBe(0.4);
  expect(readCurve('0 0.3; 1.05')).toBe('0 0.3; 1.05');
});
