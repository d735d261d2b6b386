import { expect, test } from 'vitest';
import { fairleadCard } from '../../sample-logs/cards.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { liftOffMass_kg } from '../../src/mission/vehicle.ts';
import { fullMass_kg } from '../../src/refly/rocket.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';

const flown = { pilot: 'Tansy', attempt: 1, date: '2031-06-11', notes: '' };

function vehicleOf(card: object) {
  return readMission({ card: { name: 'card', text: JSON.stringify(card) } }).vehicle!;
}

test('weighs what its card weighs, boosters counted together', () => {
  const vehicle = vehicleOf(fairleadCard(flown));
  const { rocket, missing, assumed } = rocketOf(vehicle);
  expect(missing).toEqual([]);
  expect(assumed).toEqual([]);
  expect(fullMass_kg(rocket!)).toBeCloseTo(liftOffMass_kg(vehicle)!, 9);
  expect(rocket!.stages[0]!.boosters[0]!.thrustVacuum_N).toBe(4 * 900000);
  expect(rocket!.stages[0]!.dragArea(0)).toBeCloseTo(0.32 * 22, 12);
});

test('names what is missing, and says what it takes for nothing', () => {
  const vehicle = vehicleOf({ vehicle: { stages: [{ name: 'bare', dryMass_kg: 10, ispVacuum_s: 300 }] } });
  const { rocket, missing, assumed } = rocketOf(vehicle);
  expect(rocket).toBeNull();
  expect(missing).toContain('vehicle.payload_kg');
  expect(missing).toContain('vehicle.stages[0].propellantMass_kg');
  expect(missing).toContain('vehicle.stages[0].thrustVacuum_N');
  expect(assumed.join(' ')).toContain('without drag');
});
