import { expect, test } from 'vitest';
import { budgetText, marginText } from '../../src/exchange/budgetText.ts';
import { inks } from '../../src/exchange/inks.ts';
import { handMadeReview } from './handMadeReview.ts';

test('every figure of the budget has a line with interval and basis', () => {
  const lines = budgetText(handMadeReview().budget, inks(false), 80);
  expect(lines).toHaveLength(8);
  expect(lines.find((line) => line.startsWith('margin'))?.split(/\s+/)).toEqual([
    'margin',
    '−361',
    '±15',
    'derived',
  ]);
});

test('the margin’s drawing has heading, curve, axis and one line of legend', () => {
  const lines = marginText(handMadeReview().budget, 494.3, inks(false), 80);
  expect(lines).toHaveLength(4);
  expect(lines[0]).toMatch(/^Margin ─+ 1,106 m\/s at 0 s, −361 m\/s at 494 s$/);
  expect(lines[3]).toBe('m/s to spare; ░▒▓ below zero; ▲ target out of reach from here on');
});

test('the heading tells the margin at the end of the ascent, not of the log', () => {
  expect(marginText(handMadeReview().budget, 170, inks(false), 80)[0]).toMatch(/−240 m\/s at 170 s$/);
});

test('nothing is drawn when there is nothing to draw', () => {
  const { budget } = handMadeReview();
  const nothing = budget.curves.time_s.map(() => null);
  const curves = { ...budget.curves, margin: nothing, toGo: nothing };
  expect(marginText({ ...budget, curves }, 494.3, inks(false), 80)).toEqual([]);
});
