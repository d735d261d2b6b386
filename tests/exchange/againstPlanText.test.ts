import { expect, test } from 'vitest';
import { againstPlanText, wasteText } from '../../src/exchange/againstPlanText.ts';
import { inks } from '../../src/exchange/inks.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

test('events, cutoffs and what made the difference, flown less planned', async () => {
  const bytes = (name: ReferenceName) => new TextEncoder().encode(cutLog(name));
  const { review } = await reviewFlight({
    log: { name: 'lofted.csv', bytes: bytes('earth-lofted') },
    card: { name: 'card', text: readCardText('earth-lofted') },
    plan: { name: 'nominal.csv', bytes: bytes('earth-nominal') },
  });
  const text = againstPlanText(review.againstPlan!, inks(false), 100).join('\n');
  expect(text).toMatch(/Projected total against the plan’s: \+2,901\.8 m\/s/);
  expect(text).toMatch(/pitch up to the last stage +\+2,1\d\d\.\d/);
  expect(text).toMatch(/pitch-over +12\.\d +33\.\d +\+21\.\d/);
  expect(text).toMatch(/cutoff upper +time +502\.2 +547\.8 +\+45\.6 +s/);
  const waste = wasteText(review.waste!, inks(false), 100).join('\n');
  expect(waste).toMatch(/off direction[\s\S]*remainder[\s\S]*total +4,243\.\d/);
});
