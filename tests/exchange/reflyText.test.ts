import { expect, test } from 'vitest';
import { reflyText } from '../../src/exchange/reflyText.ts';
import type { Refly } from '../../src/review/reflyRequest.ts';

const found = {
  margin_m_s: 300,
  reachesTarget: true,
  relit: false,
  insertion_s: 400,
  maxDynamicPressure_Pa: 20_000,
  maxAcceleration_m_s2: 30,
  trials: 120,
  assumed: [],
};
const words = (flownMargin_m_s: number, margin_m_s: number): string =>
  reflyText(
    {
      file: 'hop.csv',
      card: 'hop.mission.json',
      vehicle: 'Thimble',
      asFlown: { reason: 'the log has no pitch' },
      againstPlan: null,
      best: { ...found, margin_m_s, reachesTarget: margin_m_s >= 0 },
      flownMargin_m_s,
    } as unknown as Refly,
    { width: 200, colour: false },
  );

test('what flying alone would have brought is the difference of the margins', () => {
  expect(words(180, 300)).toContain('120 m/s were to be had by flying alone');
  expect(words(300.2, 300)).toContain('0 m/s were to be had');
});

test('a search that ends below what was flown does not call its end the best', () => {
  const text = words(-741, -1629);
  expect(text).toContain('The search found nothing better than this flight');
  expect(text).not.toMatch(/to be had|flown best/u);
});
