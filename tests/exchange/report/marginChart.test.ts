import { beforeAll, describe, expect, test } from 'vitest';
import { ascentSpan } from '../../../src/exchange/report/flightSpan.ts';
import { heroCurve } from '../../../src/exchange/report/heroCurve.ts';
import { marginChart } from '../../../src/exchange/report/marginChart.ts';
import type { Overlay } from '../../../src/exchange/report/overlay.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';
import type { Analysis } from '../../../src/review/types.ts';
import { elements, overlaps, sampleAnalysis, texts } from './chartsOfFlight.ts';

let analysis: Analysis;
beforeAll(async () => {
  analysis = await sampleAnalysis('bobstay-medlar-4');
});

function chart(
  width: number,
  more: { overlays?: Overlay[]; span?: { start_s: number; end_s: number } } = {},
) {
  const curve = heroCurve(analysis.review);
  if (curve === null) throw new Error('the sample flight has a margin');
  return marginChart({
    id: 'm',
    curve,
    lostAt_s: analysis.review.budget.lostAt_s,
    span: more.span ?? ascentSpan(analysis),
    frame: plotFrame(width),
    height: 268,
    overlays: more.overlays ?? [],
    framed: { start_s: 100, end_s: 200 },
  });
}

/** A plan that keeps 50 m/s to spare. */
const plan: Overlay = {
  name: 'as planned',
  time_s: [],
  channels: {},
  margin: { time_s: [0, 100, 500], values: [1000, 60, 50] },
};

describe.each([358, 680, 1120, 1744])('%i px wide', (width) => {
  test('no label lies over another, with and without a plan', () => {
    expect(overlaps(chart(width))).toEqual([]);
    expect(overlaps(chart(width, { overlays: [plan] }))).toEqual([]);
  });

  test('every label stays inside', () => {
    for (const { text, x, anchor } of texts(chart(width, { overlays: [plan] }))) {
      const wide = 7.4 * text.length;
      expect(anchor === 'end' ? x - wide : x, text).toBeGreaterThanOrEqual(anchor === 'end' ? -8 : 0);
      expect(anchor === 'start' ? x + wide : x, text).toBeLessThanOrEqual(width + 2);
    }
  });
});

test('says start, lost moment and end; the plan is named on its curve', () => {
  const told = texts(chart(1120, { overlays: [plan] })).map((t) => t.text);
  expect(told.some((t) => /^[\d,]+ m\/s (to spare )?at lift-off$/.test(t))).toBe(true);
  expect(told.some((t) => /^orbit out of reach from \d+ s$/.test(t))).toBe(true);
  expect(told.some((t) => /^−\d+ m\/s$/.test(t))).toBe(true);
  expect(told).toContain('as planned');
});

test('a stretch that does not hold them leaves their labels out', () => {
  const told = texts(chart(1120, { span: { start_s: 200, end_s: 300 } })).map((t) => t.text);
  expect(told.filter((t) => / m\/s|reach/.test(t))).toEqual([]);
});

test('the values of the shown stretch set the scale, zero always in it', () => {
  const gutter = plotFrame(1120).left;
  const ticks = texts(chart(1120, { span: { start_s: 300, end_s: 400 } })).filter(
    (t) => t.anchor === 'end' && t.x < gutter,
  );
  expect(ticks.map((t) => t.text)).toContain('0');
  // The whole ascent reaches 1,000 m/s.
  for (const { text } of ticks) expect(Number(text.replace('−', '-').replace(',', ''))).toBeLessThan(100);
});

test('a chosen stretch is shaded where it lies', () => {
  const frame = plotFrame(1120);
  const { start_s, end_s } = ascentSpan(analysis);
  const band = elements(chart(1120)).find((e) => e.attributes.fill === 'var(--framed)');
  const perSecond = (frame.right - frame.left) / (end_s - start_s);
  expect(Number(band?.attributes.width)).toBeCloseTo(100 * perSecond, 6);
});
