import { expect, test } from 'vitest';
import { findEvents } from '../../../src/flight/events.ts';
import { ascentSpan } from '../../../src/ledger/ascentEnd.ts';
import type { Figure } from '../../../src/review/types.ts';
import { wayDownReview } from '../../../src/review/wayDown/wayDown.ts';
import { flightOf, sampleText, shaken } from '../../wayDownFlights.ts';

const text = sampleText('homeward-tansy-1.csv');
const card = sampleText('homeward-tansy-1.mission.json');

/** What the sample was flown with (sample-logs/homeward.ts and its card). */
const truth = { miss_s: 0, beta: 1900 / (6.2 * 1.25), area_m2: 547.75, periapsis_m: 22_000, sink_m_s: 7.01 };

// Over 25 seeds at each of three noise levels every figure was covered 23 to 25 times.
test('over twelve draws of noise the intervals of the way down cover the truth', async () => {
  const covered = { miss_s: 0, beta: 0, area_m2: 0, periapsis_m: 0, sink_m_s: 0 };
  const draws = 12;
  for (let seed = 1; seed <= draws; seed++) {
    const noise = { 'Speed (m/s)': 0.3, 'Vertical speed (m/s)': 0.3, 'Altitude (m)': 5 };
    const flight = await flightOf(shaken(text, noise, seed), card);
    const way = await wayDownReview(flight, ascentSpan(flight), findEvents(flight));
    const figures: Record<keyof typeof truth, Figure> = {
      miss_s: way.impact!.missTime_s,
      beta: way.entry!.ballisticCoefficient_kg_m2,
      area_m2: way.parachute!.dragArea_m2,
      periapsis_m: way.deorbit!.periapsisAfter_m,
      sink_m_s: way.descent!.rate_m_s,
    };
    for (const name of Object.keys(truth) as (keyof typeof truth)[]) {
      const { low, high } = figures[name];
      if (low! <= truth[name] && truth[name] <= high!) covered[name]++;
    }
  }
  // Of twelve a 95 % interval misses more than two once in fifty times.
  for (const count of Object.values(covered)) expect(count).toBeGreaterThanOrEqual(draws - 2);
}, 60_000);
