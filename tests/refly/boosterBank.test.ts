import { expect, test } from 'vitest';
import { BoosterBank } from '../../src/refly/boosterBank.ts';
import { STANDARD_GRAVITY_M_S2 as g0 } from '../../src/units/standardGravity.ts';

const group = {
  name: 'strap-on',
  dryMass_kg: 100,
  propellantMass_kg: 1000,
  thrustVacuum_N: 10 * g0 * 250,
  ispVacuum_s: 250,
  exitArea_m2: 0.2,
  ignitionTime_s: 5,
  separationTime_s: null,
};

test('boosters without a time of their own drop when empty', () => {
  const bank = new BoosterBank([group]);
  expect(bank.next_s()).toBe(5);
  expect(bank.due(4)).toBeNull();
  expect(bank.due(5)?.name).toBe('booster-ignition');
  expect(bank.next_s()).toBeCloseTo(105, 9);
  expect(bank.mass_kg(55)).toBeCloseTo(600, 9);
  const empty_s = bank.next_s();
  expect(bank.due(empty_s)?.name).toBe('booster-burnout');
  expect(bank.due(empty_s)).toMatchObject({ name: 'booster-separation', dropped_kg: 100 });
  expect(bank.due(1e9)).toBeNull();
  expect(bank.mass_kg(200)).toBe(0);
});

test('boosters dropped early take their propellant along', () => {
  const bank = new BoosterBank([{ ...group, separationTime_s: 55 }]);
  bank.due(5);
  const away = bank.due(55);
  expect(away?.name).toBe('booster-separation');
  expect(away?.dropped_kg).toBeCloseTo(600, 9);
});

test('a flight that begins in the air has its boosters as they are by then', () => {
  const bank = (time_s: number) => {
    const begun = new BoosterBank([group]);
    begun.begin(time_s);
    return begun;
  };
  // Lit at 5 s, empty at 105 s.
  expect(bank(5).due(5)?.name).toBe('booster-ignition');
  expect(bank(55).due(55)).toBeNull();
  expect(bank(55).mass_kg(55)).toBeCloseTo(600, 9);
  expect(bank(300).mass_kg(300)).toBe(0);
  expect(bank(300).next_s()).toBe(Number.POSITIVE_INFINITY);
});
