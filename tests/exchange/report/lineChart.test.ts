import { beforeAll, describe, expect, test } from 'vitest';
import { ascentSpan } from '../../../src/exchange/report/flightSpan.ts';
import { lineChart } from '../../../src/exchange/report/lineChart.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';
import { flightStrips } from '../../../src/exchange/report/stripList.ts';
import type { Analysis } from '../../../src/review/types.ts';
import { elements, overlaps, sampleAnalysis, texts } from './chartsOfFlight.ts';

let analysis: Analysis;
beforeAll(async () => {
  analysis = await sampleAnalysis('bobstay-medlar-4');
});

function chart(title: RegExp, width: number, log = false) {
  const strip = flightStrips(analysis.strips).find((s) => title.test(s.title));
  if (strip === undefined) throw new Error(`there is no strip ${title}`);
  return lineChart({
    id: 's',
    strip,
    time_s: analysis.strips.time_s,
    phases: analysis.review.phases,
    lostAt_s: 121,
    overlays: [],
    span: ascentSpan(analysis),
    frame: plotFrame(width),
    log,
    axis: true,
    framed: null,
    titled: true,
  });
}

describe.each([680, 960])('%i px wide', (width) => {
  test.each([/^Altitude/, /^Loss rates/, /^Speed/])('%s: no label lies over another', (title) => {
    expect(overlaps(chart(title, width))).toEqual([]);
  });
});

test('the sentence tells each line with its range', () => {
  expect(chart(/^Dynamic/, 680).attributes['aria-label']).toMatch(
    /^Dynamic pressure, kPa: dynamic pressure from 0 to \d+$/,
  );
});

test('a logarithmic strip has powers of ten at its side', () => {
  const gutter = plotFrame(680).left;
  const ticks = texts(chart(/^Dynamic/, 680, true)).filter((t) => t.anchor === 'end' && t.x < gutter);
  expect(ticks.length).toBeGreaterThan(1);
  for (const { text } of ticks) expect(text).toMatch(/^(0\.0*1|10*|1,000)$/);
});

test('phases are shaded, the lost moment goes through', () => {
  const all = elements(chart(/^Mass/, 680));
  expect(all.some((e) => e.attributes.fill === 'var(--phase-shade)')).toBe(true);
  expect(all.filter((e) => e.tag === 'line' && e.attributes.stroke === 'var(--short)')).toHaveLength(1);
});

test('a known noise is drawn as a band about its line', () => {
  const [strip] = flightStrips(analysis.strips);
  if (strip === undefined) throw new Error('there are strips');
  const noisy = {
    ...strip,
    lines: strip.lines.map((l) => ({ ...l, strip: { ...l.strip, half: 5000 } })),
  };
  const drawing = lineChart({
    id: 's',
    strip: noisy,
    time_s: analysis.strips.time_s,
    phases: [],
    lostAt_s: null,
    overlays: [],
    span: ascentSpan(analysis),
    frame: plotFrame(680),
    log: false,
    axis: false,
    framed: null,
    titled: false,
  });
  expect(elements(drawing).filter((e) => e.attributes['fill-opacity'] === 0.18)).toHaveLength(
    noisy.lines.length,
  );
});
