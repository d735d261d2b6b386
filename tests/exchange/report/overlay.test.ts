import { expect, test } from 'vitest';
import { overlayOf } from '../../../src/exchange/report/overlay.ts';
import { sampleAnalysis } from './chartsOfFlight.ts';

test('another flight is drawn by its own times, with its margin where it has one', async () => {
  const analysis = await sampleAnalysis('bobstay-tansy-1');
  const overlay = overlayOf('Tansy, attempt 1', analysis);
  expect(overlay.time_s).toBe(analysis.strips.time_s);
  expect(overlay.channels.altitude_m).toBe(analysis.strips.channels.altitude_m?.values);
  expect(overlay.margin?.values).toBe(analysis.review.budget.curves.margin);
  const bare = { ...analysis.review.budget, curves: { ...analysis.review.budget.curves, margin: [null] } };
  expect(overlayOf('', { ...analysis, review: { ...analysis.review, budget: bare } }).margin).toBeNull();
});
