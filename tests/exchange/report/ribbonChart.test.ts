import { beforeAll, expect, test } from 'vitest';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';
import { ratesAt, ribbonCauses, ribbonChart, shownCauses } from '../../../src/exchange/report/ribbonChart.ts';
import type { ReviewWaste } from '../../../src/review/types.ts';
import { elements, sampleAnalysis } from './chartsOfFlight.ts';

let waste: ReviewWaste;
beforeAll(async () => {
  const { review } = await sampleAnalysis('bobstay-medlar-4');
  if (review.waste === null) throw new Error('the sample flight has its causes');
  waste = review.waste;
});

test('the areas of the causes together are what the total rose by (conservation)', () => {
  const { time_s } = waste.curves;
  let area = 0;
  for (let i = 1; i < time_s.length; i++) {
    const middle = ((time_s[i - 1] ?? 0) + (time_s[i] ?? 0)) / 2;
    const rates = ratesAt(waste, middle);
    if (rates === null) throw new Error(`no rates at ${middle}`);
    area += Object.values(rates).reduce((a, b) => a + b, 0) * ((time_s[i] ?? 0) - (time_s[i - 1] ?? 0));
  }
  // What quadrature leaves over is told apart; rates of stretches under 10 µs are written as zero.
  const remainder = waste.curves.remainder.at(-1) ?? 0;
  expect(area + remainder).toBeCloseTo(waste.curves.total.at(-1) ?? 0, 1);
});

test('outside the ascent there is no rate', () => {
  expect(ratesAt(waste, -1)).toBeNull();
  expect(ratesAt(waste, (waste.curves.time_s.at(-1) ?? 0) + 1)).toBeNull();
});

test('each cause that matters is drawn in its colour and told in the sentence', () => {
  const drawing = ribbonChart({
    waste,
    span: { start_s: 0, end_s: 540 },
    frame: plotFrame(1120),
    height: 78,
    lostAt_s: 121,
    framed: null,
  });
  const fills = elements(drawing).map((e) => e.attributes.fill);
  for (const { colour, label } of shownCauses(waste)) {
    expect(fills).toContain(colour);
    expect(String(drawing.attributes['aria-label'])).toContain(label);
  }
  expect(new Set(ribbonCauses.map((c) => c.colour)).size).toBe(ribbonCauses.length);
});
