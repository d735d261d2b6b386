import { expect, test } from 'vitest';
import { obtainableDeltaV_m_s } from '../../src/mission/obtainable.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { STANDARD_GRAVITY_M_S2 as g0 } from '../../src/units/standardGravity.ts';

const stage = { dryMass_kg: 1000, propellantMass_kg: 9000, thrustVacuum_N: 3e5, ispVacuum_s: 300 };
const { vehicle } = readMission({
  card: {
    name: 'test',
    text: JSON.stringify({
      vehicle: {
        payload_kg: 500,
        stages: [stage],
        jettisons: [{ name: 'fairing', mass_kg: 100, time_s: 40 }],
      },
    }),
  },
});
const mass_kg = 7000;
const at = (time_s: number, dropAt_s: number, gone: boolean): number | null =>
  vehicle &&
  obtainableDeltaV_m_s(vehicle, {
    stage: 0,
    mass_kg: gone ? mass_kg - 100 : mass_kg,
    time_s,
    gone: new Set(gone ? ['fairing'] : []),
    dropTimes_s: new Map([['fairing', dropAt_s]]),
  });

test('a part leaves at its very moment, not at the burn’s end: before, then and after give the same', () => {
  const byHand = 300 * g0 * Math.log(6900 / 1500);
  expect(at(41, 41, false)).toBeCloseTo(byHand, 8);
  expect(at(41, 41, true)).toBeCloseTo(byHand, 8);
  // A microsecond before, a hair of propellant still pushes the part along: flow·1e-6·(100 kg's worth).
  expect(at(41 - 1e-6, 41, false)).toBeCloseTo(byHand, 4);
});

test('a part that is overdue is counted as leaving now', () => {
  expect(at(90, 41, false)).toBeCloseTo(300 * g0 * Math.log(6900 / 1500), 8);
});
