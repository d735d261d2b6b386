import { beforeAll, describe, expect, test } from 'vitest';
import { ascentSpan } from '../../../src/exchange/report/flightSpan.ts';
import { hasPath, pathChart, pathRate } from '../../../src/exchange/report/pathChart.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';
import type { Analysis } from '../../../src/review/types.ts';
import { elements, overlaps, sampleAnalysis } from './chartsOfFlight.ts';

let analysis: Analysis;
beforeAll(async () => {
  analysis = await sampleAnalysis('bobstay-medlar-4');
});

function chart(width: number) {
  return pathChart({
    analysis,
    overlays: [],
    span: ascentSpan(analysis),
    frame: plotFrame(width),
    height: 340,
    at_s: 100,
    framed: null,
  });
}

test('the path is drawn where the log moves over the ground', () => {
  expect(hasPath(analysis)).toBe(true);
  expect(chart(1120)?.attributes['aria-label']).toMatch(/^Path: .* highest 17\d km$/);
});

describe.each([358, 680, 1120])('%i px wide', (width) => {
  test('no label lies over another', () => {
    expect(overlaps(chart(width))).toEqual([]);
  });
});

test('the line is broadest where most was lost', () => {
  const rate = pathRate(analysis);
  expect(rate?.name).toBe('waste');
  const outline = elements(chart(1120)).find((e) => e.tag === 'path' && e.attributes.fill === 'var(--ink)');
  const places = [...String(outline?.attributes.d).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(
    (m) => [Number(m[1]), Number(m[2])] as const,
  );
  const widthAt = (i: number) => {
    const [a, b] = [places[i], places[places.length - 1 - i]];
    return Math.hypot((a?.[0] ?? 0) - (b?.[0] ?? 0), (a?.[1] ?? 0) - (b?.[1] ?? 0));
  };
  // 401 points a side: 5 % of the ascent is the steepest loss, 60 % the upper stage's small one.
  expect(widthAt(20)).toBeGreaterThan(3 * widthAt(240));
});

test('without the causes the ledger’s losses make it broad, without those nothing does', () => {
  const bare = { ...analysis, review: { ...analysis.review, waste: null } };
  expect(pathRate(bare)?.name).toBe('losses');
  expect(pathRate({ ...bare, strips: { ...analysis.strips, channels: {} } })).toBeNull();
});
