import { describe, expect, test } from 'vitest';
import { findBurns } from '../../src/flight/burnEdges.ts';
import { findMassDrops } from '../../src/flight/massDrops.ts';

/** Two stages: 40 kg/s from 0.37 to 12.234 s, 90 kg thrown off at 13.3 s, 7 kg/s from 14.871 s to 29.5 s. */
function massAt(x: number): number {
  let m = 1000;
  m -= 40 * Math.min(Math.max(x - 0.37, 0), 12.234 - 0.37);
  if (x > 13.3) m -= 90;
  m -= 7 * Math.min(Math.max(x - 14.871, 0), 29.5 - 14.871);
  return m;
}

const throttleAt = (x: number): number => ((x >= 0.37 && x < 12.234) || (x >= 14.871 && x < 29.5) ? 1 : 0);

function sample(step: number) {
  const t = Float64Array.from({ length: Math.floor(35 / step) }, (_, i) => i * step);
  return { t, mass: t.map(massAt), throttle: t.map(throttleAt), thrust: null };
}

describe.each([0.1, 0.2, 0.5])(
  'edges lie where the mass line meets its plateau, sampled every %s s',
  (step) => {
    for (const withThrottle of [true, false]) {
      test(withThrottle ? 'with a throttle channel' : 'from mass alone', () => {
        const log = sample(step);
        const drops = findMassDrops(log.t, log.mass, 0, 0);
        expect(drops.map((d) => Math.round(d.mass_kg))).toEqual([90]);
        const burns = findBurns({
          ...log,
          throttle: withThrottle ? log.throttle : null,
          drops,
          massSigma_kg: 0,
          massStep_kg: 0,
        });
        expect(burns.length).toBe(2);
        // Exact lines cross exactly; what is left is rounding.
        expect(burns[0]!.start_s).toBeCloseTo(0.37, 6);
        expect(burns[0]!.end_s).toBeCloseTo(12.234, 6);
        expect(burns[1]!.start_s).toBeCloseTo(14.871, 6);
        expect(burns[1]!.end_s).toBeCloseTo(29.5, 6);
        expect(burns[0]!.startMass_kg).toBeCloseTo(1000, 6);
        expect(burns[0]!.endMass_kg).toBeCloseTo(massAt(12.9), 6);
        expect(burns[1]!.endMass_kg).toBeCloseTo(massAt(34), 6);
      });
    }
  },
);

test('a throttle left open over dry tanks does not prolong the burn', () => {
  const log = sample(0.1);
  const open = log.t.map((x) => (x >= 14.871 ? 1 : throttleAt(x)));
  const burns = findBurns({
    ...log,
    throttle: open,
    drops: findMassDrops(log.t, log.mass, 0, 0),
    massSigma_kg: 0,
    massStep_kg: 0,
  });
  expect(burns.length).toBe(2);
  // The gap in which the fall ends is found; the line through it gives the instant within the gap.
  expect(Math.abs(burns[1]!.end_s - 29.5)).toBeLessThan(0.11);
});

test('a log that ends under thrust says so', () => {
  const log = sample(0.1);
  const cut = 200;
  const burns = findBurns({
    t: log.t.slice(0, cut),
    mass: log.mass.slice(0, cut),
    throttle: log.throttle.slice(0, cut),
    thrust: null,
    drops: findMassDrops(log.t.slice(0, cut), log.mass.slice(0, cut), 0, 0),
    massSigma_kg: 0,
    massStep_kg: 0,
  });
  expect(burns.at(-1)!.endsAfterLog).toBe(true);
  expect(burns[0]!.startsBeforeLog).toBe(false);
});
