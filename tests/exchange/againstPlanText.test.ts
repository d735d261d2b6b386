import { expect, test } from 'vitest';
import { againstPlanText, wasteText } from '../../src/exchange/againstPlanText.ts';
import { inks } from '../../src/exchange/inks.ts';
import { reviewFlight } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText, readTruth } from '../referenceFlights.ts';

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
  // The independent integrator's orbit, and the mass that the log ends with, in the units that the rows name.
  const last = text.slice(text.search(/cutoff upper +time/u));
  const row = (name: string): number[] =>
    (new RegExp(`${name} +(\\S+) +(\\S+) `, 'u').exec(last) ?? [])
      .slice(1)
      .map((cell) => Number(cell.replaceAll(',', '').replace('−', '-')));
  const flights = ['earth-nominal', 'earth-lofted'] as const;
  const orbits = flights.map((name) => readTruth(name).orbit_at_cutoff);
  const near = (name: string, wanted: readonly number[], within: number) => {
    const told = row(name);
    expect(told).toHaveLength(2);
    told.forEach((value, i) => {
      expect(Math.abs(value - wanted[i]!), name).toBeLessThan(within);
    });
  };
  // 31 m of apsis at 10 Hz, and half of the last digit.
  near(
    'apoapsis',
    orbits.map((o) => o.apoapsis_altitude_m / 1000),
    0.09,
  );
  near(
    'periapsis',
    orbits.map((o) => o.periapsis_altitude_m / 1000),
    0.09,
  );
  near(
    'mass',
    flights.map((name) => Number(cutLog(name).trim().split('\n').at(-1)!.split(',')[3])),
    1,
  );
  const waste = wasteText(review.waste!, inks(false), 100).join('\n');
  expect(waste).toMatch(/off direction[\s\S]*remainder[\s\S]*total +4,243\.\d/);
});
