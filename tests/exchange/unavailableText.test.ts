import { expect, test } from 'vitest';
import { unavailableTexts } from '../../src/exchange/unavailableText.ts';
import { handMadeReview, unavailable } from './handMadeReview.ts';

test('one sentence for each reason; neither the inertial frame’s absent frame entry nor the efficiency of a burn after the ascent is a lack', () => {
  expect(unavailableTexts(handMadeReview())).toEqual([
    'inclination: the log has neither position nor heading',
  ]);
});

test('a figure that only the inertial frame lacks is named so', () => {
  const review = handMadeReview();
  const inertial = { ...review.ledger.inertial, drag: unavailable('no latitude') };
  expect(unavailableTexts({ ...review, ledger: { ...review.ledger, inertial } })).toContain(
    'drag (inertial): no latitude',
  );
});
