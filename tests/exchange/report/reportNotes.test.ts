import { expect, test } from 'vitest';
import { drawingText } from '../../../src/exchange/report/drawing.ts';
import { methodNotes } from '../../../src/exchange/report/methodNotes.ts';
import { limitSections, methodSections } from '../../../src/exchange/report/reportNotes.ts';
import { handMadeReview } from '../handMadeReview.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

const review = handMadeReview();
const told = (sections: ReturnType<typeof limitSections>) =>
  sections.map((s) => (s === null ? null : textOf(readMarkup(drawingText(s)))));

test('what is missing, assumed and repaired is told as sentences', () => {
  const [missing, assumed, log] = told(limitSections(review));
  expect(missing).toMatch(/^Could not be derivedInclination: the log has neither position nor heading\./);
  expect(assumed).toBe('AssumedThe ascending node is free, because the card names none.');
  expect(log).toBe('About the logNo value for 1.1 s; bridged, which widens the intervals.');
});

test('what is not there has no heading', () => {
  const nothing = { ...review, quality: [], mission: { ...review.mission, assumed: [] } };
  expect(told(limitSections(nothing)).slice(1)).toEqual([null, null]);
  expect(told(methodSections({ ...review, derivation: [], channels: [] })).slice(0, 2)).toEqual([null, null]);
});

test('long headers are cut, so that the table keeps its width', () => {
  const [channel] = review.channels;
  const channels = channel === undefined ? [] : [{ ...channel, column: 'x'.repeat(400) }];
  const [, table] = methodSections({ ...review, channels });
  const cells = elementsOf(readMarkup(table ? drawingText(table) : '')).filter((e) => e.tag === 'td');
  expect(Math.max(...cells.map((c) => textOf(c).length))).toBeLessThanOrEqual(60);
});

test('every note of the method is a whole sentence and names its term once', () => {
  expect(new Set(methodNotes.map((n) => n.term)).size).toBe(methodNotes.length);
  for (const { note } of methodNotes) expect(note).toMatch(/\.$/);
});
