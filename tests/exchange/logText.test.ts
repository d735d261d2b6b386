import { expect, test } from 'vitest';
import { inks } from '../../src/exchange/inks.ts';
import { notesText, readingsText } from '../../src/exchange/logText.ts';
import { handMadeReview } from './handMadeReview.ts';

test('each column’s reading tells channel, column, unit, where the unit is from and how sure it is', () => {
  expect(readingsText(handMadeReview().channels, inks(false))).toEqual([
    'channel   column         unit  from                sure',
    'altitude  Altitude [ft]  ft    unit in the header  97 %',
  ]);
});

test('a note tells where before what', () => {
  expect(notesText(handMadeReview().quality, 40)).toEqual([
    '· speed, rows 120–131: no value for 1.1',
    '  s; bridged, which widens the',
    '  intervals.',
  ]);
});

test('a single row is no stretch of rows', () => {
  const [note] = handMadeReview().quality;
  expect(notesText([{ ...note!, rows: [120, 120] }], 80)[0]).toMatch(/^· speed, row 120: /u);
});
