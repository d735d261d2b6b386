import { beforeAll, describe, expect, test } from 'vitest';
import { inks } from '../../src/exchange/inks.ts';
import { orbitWorkText } from '../../src/exchange/orbitWorkText.ts';
import { reviewText } from '../../src/exchange/reviewText.ts';
import { wayDownText } from '../../src/exchange/wayDownText.ts';
import { length } from '../../src/exchange/wrapText.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Review } from '../../src/review/types.ts';
import { sampleText } from '../wayDownFlights.ts';
import { handMadeReview } from './handMadeReview.ts';

const ink = inks(false);

describe('the homeward sample', () => {
  let review: Review;
  beforeAll(async () => {
    const text = sampleText('homeward-tansy-1.csv');
    ({ review } = await reviewFlight({
      log: { name: 'homeward-tansy-1.csv', bytes: new TextEncoder().encode(text) },
      card: { name: 'card', text: sampleText('homeward-tansy-1.mission.json') },
    }));
  }, 60_000);

  test('tells deorbit, fall, entry, parachutes, descent and touchdown in 80 columns', () => {
    const lines = wayDownText(review.return, ink, 80);
    for (const line of lines) expect(length(line)).toBeLessThanOrEqual(80);
    const heads = [
      'deorbit burn',
      'fall predicted',
      'entry',
      'parachute opens',
      'rate of descent',
      'touchdown',
    ];
    expect(heads.map((head) => lines.filter((line) => line.startsWith(head)).length)).toEqual(
      heads.map(() => 1),
    );
    expect(lines.find((line) => line.includes('ballistic'))).toMatch(/245\.2\s+kg\/m².*card 245/u);
  });

  test('tells the burns in orbit and the orbit’s history', () => {
    const lines = orbitWorkText(review.orbitWork, ink, 80);
    for (const line of lines) expect(length(line)).toBeLessThanOrEqual(80);
    expect(lines.filter((line) => line.startsWith('·')).length).toBe(4);
    expect(lines.at(-1)).toMatch(/deorbit\s+281\.6\s+22\.0/u);
  });

  test('both stand in the review’s text', () => {
    const text = reviewText(review, { width: 80, colour: false });
    expect(text).toContain('\nWork in orbit ─');
    expect(text).toContain('\nWay down ─');
    expect(text).not.toContain('the orbit work tells it');
  });
});

test('a flight that stays up, or does no work in orbit, has no such lines', () => {
  const review = handMadeReview();
  expect(wayDownText(review.return, ink, 80)).toEqual([]);
  expect(orbitWorkText(review.orbitWork, ink, 80)).toEqual([]);
});
