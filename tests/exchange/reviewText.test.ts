import { describe, expect, test } from 'vitest';
import { plainText } from '../../src/exchange/plainText.ts';
import { reviewText } from '../../src/exchange/reviewText.ts';
import { length } from '../../src/exchange/wrapText.ts';
import type { Review } from '../../src/review/types.ts';
import { handMadeReview, unavailable } from './handMadeReview.ts';

const plain = { width: 80, colour: false } as const;

/** The review with a hostile or long text in every place where the log or card can put one. */
function withTexts(text: string): Review {
  const review = handMadeReview();
  const [event] = review.events;
  const [channel] = review.channels;
  const [burn] = review.burns;
  const [finding] = review.findings;
  if (!event || !channel || !burn || !finding) throw new Error('the hand-made review has one of each');
  return {
    ...review,
    source: { ...review.source, file: text, card: text },
    mission: {
      ...review.mission,
      name: text,
      world: text,
      vehicle: text,
      pilot: text,
      date: text,
      assumed: [text],
    },
    channels: [{ ...channel, column: text, unit: text }],
    quality: [{ code: 'x', channel: null, rows: null, count: 1, text }],
    events: [{ ...event, subject: text }],
    burns: [{ ...burn, stage: text }],
    findings: [{ ...finding, text, evidence: text, advice: text }],
    verdict: { ...review.verdict, detail: text },
  };
}

describe('reviewText', () => {
  test('answers come in the order of their weight, cautions once and last', () => {
    const text = reviewText(handMadeReview(), plain);
    const order = [
      'Not in orbit: 361 m/s short.',
      'Where 5,541 m/s went',
      'Budget',
      'Margin',
      'Burns',
      'Orbit ─',
      'Events',
      'Findings',
      'Could not be derived',
      'Assumed',
      'How the log was understood',
      'The log itself',
      'For the review of simulated',
    ].map((part) => text.indexOf(part));
    expect(Math.min(...order)).toBeGreaterThan(0);
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(text.split('For the review of simulated')).toHaveLength(2);
  });

  test('the ledger shows both frames, interval, share and basis (snapshot)', () => {
    const lines = reviewText(handMadeReview(), plain).split('\n');
    expect(lines.find((line) => line.startsWith('gravity'))?.split(/\s+/)).toEqual([
      'gravity',
      '1,288',
      '±5',
      '23.2',
      '%',
      '1,291',
      'derived',
    ]);
    expect(lines).toContain('heading unseen, could move steering −10 … +0 (m/s)');
  });

  test('the margin line changes its marks where the margin changes sign, at the moment marked', () => {
    const lines = reviewText(handMadeReview(), plain).split('\n');
    const bar = lines.find((line) => line.startsWith('█')) ?? '';
    const axis = lines.find((line) => line.includes('▲ 123 s')) ?? '';
    expect(bar.search(/[░▒▓]/)).toBe(axis.indexOf('▲') + 1);
    expect(bar).toHaveLength(80);
  });

  test('an unavailable figure is a dash, and its reason is told once', () => {
    const review = handMadeReview();
    const none = unavailable('the log has no mass');
    const { ground, inertial } = review.ledger;
    const text = reviewText(
      {
        ...review,
        ledger: {
          ...review.ledger,
          ground: { ...ground, drag: none, steering: none },
          inertial: { ...inertial, drag: none },
        },
      },
      plain,
    );
    expect(text).toMatch(/^drag +— +— +— +unavailable$/m);
    expect(text.match(/the log has no mass/g)).toHaveLength(1);
    expect(text).toMatch(/steering, drag: the log has no mass/);
  });

  test('without a margin the delta-v to go takes its place', () => {
    const review = handMadeReview();
    const curves = { ...review.budget.curves, margin: review.budget.curves.margin.map(() => null) };
    const text = reviewText({ ...review, budget: { ...review.budget, lostAt_s: null, curves } }, plain);
    expect(text).toMatch(/^Delta-v to go ─+ 4,400 m\/s at 0 s, 361 m\/s at 494 s$/m);
    expect(text).not.toContain('▲');
  });

  test.each([
    ['ordinary texts', handMadeReview()],
    ['long words', withTexts('x'.repeat(200))],
    ['long sentences', withTexts('a thing was seen and '.repeat(20))],
  ])('no line is longer than 80 characters: %s', (_name, review) => {
    for (const line of reviewText(review, plain).split('\n')) expect(length(line)).toBeLessThanOrEqual(80);
  });

  test('no escape of the log or the card reaches the terminal', () => {
    const text = reviewText(withTexts('evil\u001b[31m\u001b]0;t\u0007\u009b2J\u202e\r\nx'), plain);
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u);
    expect(text).toContain('evil x');
  });

  test('colour adds nothing but colour', () => {
    const coloured = reviewText(handMadeReview(), { width: 80, colour: true });
    expect(coloured).toContain('\u001b[');
    expect(coloured.split('\n').map(plainText).join('\n')).toBe(reviewText(handMadeReview(), plain));
  });
});
