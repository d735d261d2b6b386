import { describe, expect, test } from 'vitest';
import { ascentSpan, wholeSpan } from '../../../src/exchange/report/flightSpan.ts';
import { plotFrame } from '../../../src/exchange/report/plotFrame.ts';
import { timeBar } from '../../../src/exchange/report/timeBar.ts';
import { overlaps, sampleAnalysis, texts } from './chartsOfFlight.ts';

describe.each([358, 680, 1120, 1744])('%i px wide', (width) => {
  test.each(['bobstay-medlar-4', 'thimble-teasel-1', 'homeward-tansy-1'])(
    '%s: no time, phase or event lies over another, whole log and ascent',
    async (name) => {
      const analysis = await sampleAnalysis(name);
      for (const span of [ascentSpan(analysis), wholeSpan(analysis)]) {
        expect(overlaps(timeBar(analysis.review, span, plotFrame(width)))).toEqual([]);
      }
    },
  );
});

test('the most telling events are named, the phases told in the sentence', async () => {
  const analysis = await sampleAnalysis('bobstay-medlar-4');
  const bar = timeBar(analysis.review, ascentSpan(analysis), plotFrame(1120));
  const words = texts(bar).map((t) => t.text);
  for (const event of ['cutoff', 'max q', 'separation']) expect(words).toContain(event);
  expect(bar.attributes['aria-label']).toMatch(/^Phases: .*lower .* to .* s/);
});
