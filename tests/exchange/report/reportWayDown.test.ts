import { expect, test } from 'vitest';
import { drawingText } from '../../../src/exchange/report/drawing.ts';
import { wayDownSection } from '../../../src/exchange/report/reportWayDown.ts';
import { unitsOf } from '../../../src/units/unitSets.ts';
import { figure, handMadeReview } from '../handMadeReview.ts';
import { elementsOf, readMarkup, textOf } from './readMarkup.ts';

const units = unitsOf('km');

const review = handMadeReview();

test('a log that ends before the ground has no way down', () => {
  expect(wayDownSection(review, units)).toBeNull();
});

test('what is known of it stands in a table, what is not is left out', () => {
  const way = {
    ...review.return,
    code: 'landed',
    text: 'Touchdown at 6,595 s with 7.0 m/s.',
    touchdown_s: 6595,
    touchdownSpeed_m_s: figure(7, 0.2, 'measured'),
    descent: { rate_m_s: figure(7.1, 0.1), altitude_m: 100, expected_m_s: figure(6.9, 0, 'derived') },
  } as const;
  const drawing = wayDownSection({ ...review, return: way }, units);
  const root = readMarkup(drawing === null ? '' : drawingText(drawing));
  const rows = elementsOf(root).filter((e) => e.tag === 'tr');
  expect(rows.slice(1).map((row) => row.children.map(textOf))).toEqual([
    ['rate of descent', '7.1', 'm/s', '±0.1', '', 'derived'],
    ['expected by the card', '6.9', 'm/s', '±0', '', 'derived'],
    ['speed at touchdown', '7.0', 'm/s', '±0.2', '6,595 s', 'measured'],
  ]);
  expect(textOf(root)).toMatch(/^Way down touchdown at 6,595 sTouchdown at/);
});
