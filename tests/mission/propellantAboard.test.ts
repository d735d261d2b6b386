import { expect, test } from 'vitest';
import { propellantAboard_kg } from '../../src/mission/propellantAboard.ts';
import { readMission } from '../../src/mission/readCard.ts';

const { vehicle } = readMission({
  card: {
    name: 'card',
    text: JSON.stringify({
      vehicle: {
        payload_kg: 100,
        stages: [
          {
            dryMass_kg: 50,
            propellantMass_kg: 500,
            thrustVacuum_N: 2e4,
            ispVacuum_s: 250,
            boosters: [
              {
                name: 'strap-on',
                count: 2,
                dryMass_kg: 5,
                propellantMass_kg: 40,
                thrustVacuum_N: 5e3,
                ispVacuum_s: 240,
                exitArea_m2: 0,
              },
            ],
          },
          { dryMass_kg: 20, propellantMass_kg: 80, thrustVacuum_N: 3e3, ispVacuum_s: 300 },
        ],
        jettisons: [{ name: 'fairing', mass_kg: 10, altitude_m: 1e5 }],
      },
    }),
  },
});

test('what is left of the mass when everything dry is taken off', () => {
  const whole = 100 + 50 + 500 + 2 * 45 + 20 + 80 + 10;
  expect(propellantAboard_kg(vehicle!, 0, whole, new Set())).toBeCloseTo(500 + 80 + 80, 9);
  expect(propellantAboard_kg(vehicle!, 0, whole - 90 - 10, new Set(['strap-on', 'fairing']))).toBeCloseTo(
    580,
    9,
  );
  expect(propellantAboard_kg(vehicle!, 1, 100 + 20 + 33, new Set(['fairing']))).toBeCloseTo(33, 9);
  expect(propellantAboard_kg(vehicle!, 1, 10, new Set(['fairing']))).toBe(0);
  expect(propellantAboard_kg({ ...vehicle!, payload_kg: null }, 0, whole, new Set())).toBeNull();
});
