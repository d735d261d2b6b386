import { expect, test } from 'vitest';
import { unavailableTexts } from '../../src/exchange/unavailableText.ts';
import { handMadeReview, unavailable } from './handMadeReview.ts';

test('one sentence for each reason; the inertial frame’s absent frame entry is not a lack', () => {
  expect(unavailableTexts(handMadeReview())).toEqual([
    'inclination: the log has neither position nor heading',
    'a burn’s efficiency: it is not part of the ascent',
  ]);
});

test('a figure that only the inertial frame lacks is named so', () => {
  const review = handMadeReview();
  const inertial = { ...review.ledger.inertial, drag: unavailable('no latitude') };
  expect(unavailableTexts({ ...review, ledger: { ...review.ledger, inertial } })).toContain(
    'drag (inertial): no latitude',
  );
});
