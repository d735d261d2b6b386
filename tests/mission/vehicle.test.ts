import { expect, test } from 'vitest';
import { readMission } from '../../src/mission/readCard.ts';
import type { Vehicle } from '../../src/mission/types.ts';
import { dragArea_m2, liftOffMass_kg, massAbove_kg, stageMass_kg } from '../../src/mission/vehicle.ts';

/** A vehicle as the reader makes it. */
function vehicle(card: object): Vehicle {
  const mission = readMission({ card: { name: 'test', text: JSON.stringify({ vehicle: card }) } });
  if (mission.vehicle === null) throw new Error('no vehicle');
  return mission.vehicle;
}

const full = vehicle({
  payload_kg: 100,
  stages: [
    {
      dryMass_kg: 50,
      propellantMass_kg: 500,
      boosters: [{ count: 2, dryMass_kg: 10, propellantMass_kg: 40, thrustVacuum_N: 1e4, ispVacuum_s: 250 }],
    },
    { dryMass_kg: 20, propellantMass_kg: 80 },
  ],
  jettisons: [{ mass_kg: 7, time_s: 60 }],
});

test('masses: stages with their boosters, what each carries, the whole at lift-off', () => {
  expect(full.stages.map(stageMass_kg)).toEqual([650, 100]);
  expect(massAbove_kg(full, 0)).toBe(200);
  expect(massAbove_kg(full, 1)).toBe(100);
  expect(liftOffMass_kg(full)).toBe(857);
});

test('a mass that is missing makes the sums unknown, not wrong', () => {
  const partial = vehicle({
    payload_kg: 100,
    stages: [{ dryMass_kg: 50 }, { dryMass_kg: 20, propellantMass_kg: 80 }],
  });
  expect(liftOffMass_kg(partial)).toBeNull();
  expect(massAbove_kg(partial, 0)).toBe(200);
  expect(massAbove_kg(vehicle({ stages: [{}] }), 0)).toBeNull();
});

test('drag area: straight between nodes, constant beyond, null without area or coefficient', () => {
  const [stage, plain, bare] = vehicle({
    stages: [
      {
        referenceArea_m2: 10,
        dragCoefficient: [
          [0.5, 0.3],
          [1, 0.5],
          [4, 0.2],
        ],
      },
      { referenceArea_m2: 2, dragCoefficient: 0.4 },
      { referenceArea_m2: 2 },
    ],
  }).stages;
  if (!stage || !plain || !bare) throw new Error('no stage');
  expect([0, 0.5, 0.75, 1, 2.5, 4, 9].map((m) => dragArea_m2(stage, m))).toEqual(
    [3, 3, 4, 5, 3.5, 2, 2].map((a) => expect.closeTo(a, 12)),
  );
  expect(dragArea_m2(plain, 3)).toBeCloseTo(0.8, 12);
  expect(dragArea_m2(bare, 1)).toBeNull();
});
