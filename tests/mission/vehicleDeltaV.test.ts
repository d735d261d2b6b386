import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import { vehicleDeltaV_m_s } from '../../src/mission/vehicleDeltaV.ts';
import { STANDARD_GRAVITY_M_S2 as g0 } from '../../src/units/standardGravity.ts';

function deltaV(card: object): number | null {
  const mission = readMission({ card: { name: 'test', text: JSON.stringify({ vehicle: card }) } });
  return mission.vehicle && vehicleDeltaV_m_s(mission.vehicle);
}

test.each(['earth-nominal', 'earth-lofted', 'osselby-nominal', 'osselby-short'])(
  'the reference vehicle of %s has the delta-v that the independent program gives',
  (name) => {
    const at = (suffix: string) =>
      readFileSync(new URL(`../flights/${name}.${suffix}.json`, import.meta.url), 'utf8');
    const mission = readMission({ card: { name, text: at('mission') } });
    expect(mission.vehicle && vehicleDeltaV_m_s(mission.vehicle)).toBeCloseTo(
      JSON.parse(at('truth')).vehicle_delta_v_vacuum,
      8,
    );
  },
);

const core = { dryMass_kg: 1000, propellantMass_kg: 9000, thrustVacuum_N: 3e5, ispVacuum_s: 300 };
const booster = { dryMass_kg: 200, propellantMass_kg: 800, thrustVacuum_N: 1e5, ispVacuum_s: 250 };

test('boosters like the core and dropped with it are one bigger stage', () => {
  const likeCore = { ...core, count: 2 };
  const { count: _, ...one } = likeCore;
  const three = { dryMass_kg: 3000, propellantMass_kg: 27_000, ispVacuum_s: 300 };
  expect(deltaV({ payload_kg: 500, stages: [{ ...core, boosters: [{ ...one, count: 2 }] }] })).toBeCloseTo(
    deltaV({ payload_kg: 500, stages: [three] }) ?? Number.NaN,
    8,
  );
});

test('boosters burn beside their core and drop when empty (by hand)', () => {
  const found = deltaV({ payload_kg: 500, stages: [{ ...core, boosters: [{ ...booster, count: 2 }] }] });
  const flowCore = 3e5 / (g0 * 300);
  const flowBoosters = 2e5 / (g0 * 250);
  const burn = 1600 / flowBoosters;
  const start = 500 + 10_000 + 2000;
  const atDrop = start - burn * (flowCore + flowBoosters);
  const together = (5e5 / (flowCore + flowBoosters)) * Math.log(start / atDrop);
  const alone = 300 * g0 * Math.log((atDrop - 400) / 1500);
  expect(found).toBeCloseTo(together + alone, 8);
});

test('boosters lit later, and boosters dropped before they are empty', () => {
  const late = deltaV({
    payload_kg: 500,
    stages: [{ ...core, boosters: [{ ...booster, ignitionTime_s: 20 }] }],
  });
  const soon = deltaV({ payload_kg: 500, stages: [{ ...core, boosters: [booster] }] }) ?? Number.NaN;
  expect(late).not.toBeCloseTo(soon, 1);
  const dropped = deltaV({
    payload_kg: 500,
    stages: [{ ...core, boosters: [{ ...booster, separationTime_s: 5 }] }],
  });
  const flow = 1e5 / (g0 * 250);
  const flowCore = 3e5 / (g0 * 300);
  const start = 11_500;
  const after = start - 5 * (flow + flowCore);
  expect(dropped).toBeCloseTo(
    (4e5 / (flow + flowCore)) * Math.log(start / after) +
      300 * g0 * Math.log((after - 200 - 800 + 5 * flow) / 1500),
    8,
  );
});

test('a jettison at its time leaves less to push from then on', () => {
  const without = deltaV({ payload_kg: 500, stages: [core] }) ?? Number.NaN;
  const early = deltaV({ payload_kg: 500, stages: [core], jettisons: [{ mass_kg: 100, time_s: 1 }] }) ?? 0;
  const late = deltaV({ payload_kg: 500, stages: [core], jettisons: [{ mass_kg: 100, time_s: 80 }] }) ?? 0;
  expect(late).toBeLessThan(early);
  expect(early).toBeLessThan(without);
  const flow = 3e5 / (g0 * 300);
  const byHand = 300 * g0 * (Math.log(10_600 / (10_600 - 80 * flow)) + Math.log((10_500 - 80 * flow) / 1500));
  expect(late).toBeCloseTo(byHand, 8);
});

test('a jettison at an altitude is counted as leaving with the first stage', () => {
  const stages = [core, { ...core, propellantMass_kg: 500, dryMass_kg: 100 }];
  const found = deltaV({ payload_kg: 500, stages, jettisons: [{ mass_kg: 100, altitude_m: 9e4 }] });
  const byHand = 300 * g0 * (Math.log(11_200 / 2200) + Math.log(1100 / 600));
  expect(found).toBeCloseTo(byHand, 8);
});

test('null where a mass, an impulse or a needed thrust is missing; thrust alone is not needed', () => {
  const { thrustVacuum_N: _, ...thrustless } = core;
  expect(deltaV({ stages: [core] })).toBeNull();
  expect(deltaV({ payload_kg: 1, stages: [] })).toBeNull();
  expect(deltaV({ payload_kg: 500, stages: [{ dryMass_kg: 1000, propellantMass_kg: 9000 }] })).toBeNull();
  expect(deltaV({ payload_kg: 500, stages: [{ ...thrustless, boosters: [booster] }] })).toBeNull();
  expect(deltaV({ payload_kg: 500, stages: [thrustless] })).toBeCloseTo(300 * g0 * Math.log(7), 8);
});

test('scale: twice every mass and thrust, the same delta-v', () => {
  const once = deltaV({ payload_kg: 500, stages: [{ ...core, boosters: [booster] }] });
  const twice = deltaV({
    payload_kg: 1000,
    stages: [
      {
        dryMass_kg: 2000,
        propellantMass_kg: 18_000,
        thrustVacuum_N: 6e5,
        ispVacuum_s: 300,
        boosters: [{ ...booster, count: 2 }],
      },
    ],
  });
  expect(twice).toBeCloseTo(once ?? Number.NaN, 8);
});
