import { expect, test } from 'vitest';
import { describeMission } from '../../src/mission/describeCard.ts';
import { readMission } from '../../src/mission/readCard.ts';

const describe = (card: unknown) =>
  describeMission(readMission({ card: { name: 'test', text: JSON.stringify(card) } }));

const stage = {
  name: 'lower',
  dryMass_kg: 1000,
  propellantMass_kg: 9000,
  thrustVacuum_N: 3e5,
  ispVacuum_s: 300,
  exitArea_m2: 0.4,
  referenceArea_m2: 2,
  dragCoefficient: 0.4,
};

test('a full card: everything understood, nothing missing', () => {
  const { understood, missing } = describe({
    mission: 'Long Ladder',
    world: 'earth',
    site: { latitude_deg: 28.5, launchAzimuth_deg: 90 },
    target: { apoapsisAltitude_m: 3e5, periapsisAltitude_m: 2e5, tolerance_m: 1e4, inclination_deg: 28.5 },
    vehicle: {
      name: 'Bobstay',
      payload_kg: 500,
      stages: [
        {
          ...stage,
          boosters: [
            {
              count: 2,
              dryMass_kg: 100,
              propellantMass_kg: 900,
              thrustVacuum_N: 1e5,
              ispVacuum_s: 250,
              exitArea_m2: 0,
            },
          ],
        },
      ],
      jettisons: [
        { name: 'fairing', mass_kg: 80, altitude_m: 1e5 },
        { name: 'tower', mass_kg: 20, time_s: 45 },
      ],
    },
    limits: { dynamicPressure_Pa: 4e4, acceleration_m_s2: 40, angleOfAttackInAir_deg: 5 },
    flight: { pilot: 'Tansy', attempt: 3 },
    return: {
      mass_kg: 400,
      referenceArea_m2: 2,
      dragCoefficient: 1,
      noseRadius_m: 1,
      parachutes: [{ dragArea_m2: 50 }],
    },
  });
  expect(missing).toEqual([]);
  const text = understood.join('\n');
  expect(text).toContain('Mission: Long Ladder.');
  expect(text).toContain('orbit of 200 km by 300 km within 10 km, inclination 28.5°');
  expect(text).toContain('12,600 kg at lift-off');
  expect(text).toContain('2 boosters of 2,000 kg in all');
  expect(text).toContain('Jettison “fairing”: 80.0 kg at 100 km.');
  expect(text).toContain('Jettison “tower”: 20.0 kg at 45 s.');
  expect(text).toContain(
    'dynamic pressure up to 40 kPa, acceleration up to 40 m/s², angle of attack in air up to 5°',
  );
  expect(text).toContain('Flight: pilot Tansy, attempt 3.');
  expect(text).toContain('Return: 400 kg, 1 parachute.');
  expect(text).toContain('Assumed: “lower” is taken not to throttle');
});

test('what is missing is named by its path, with what it costs', () => {
  const { missing } = describe({ vehicle: { stages: [{ name: 'lower' }] }, return: {} });
  const text = missing.join('\n');
  for (const field of [
    'site.latitude_deg',
    'site.launchAzimuth_deg',
    'target',
    'vehicle.payload_kg',
    'vehicle.stages[0].dryMass_kg',
    'vehicle.stages[0].propellantMass_kg',
    'vehicle.stages[0].ispVacuum_s',
    'vehicle.stages[0].thrustVacuum_N',
    'vehicle.stages[0].exitArea_m2',
    'vehicle.stages[0].referenceArea_m2',
    'return.mass_kg',
    'return.noseRadius_m',
  ]) {
    expect(text, field).toContain(field);
  }
});

test('where there is no air, what air would need is not missed', () => {
  const { exitArea_m2: _, referenceArea_m2: __, ...airless } = stage;
  const { missing } = describe({
    world: 'moon',
    site: { latitude_deg: 0, launchAzimuth_deg: 90 },
    target: { periapsisAltitude_m: 2e4 },
    vehicle: { payload_kg: 1, stages: [airless] },
  });
  expect(missing).toEqual([]);
});

test('no card: the assumptions are said, and no vehicle costs the margin', () => {
  const { understood, missing } = describeMission(readMission({}));
  expect(understood.join('\n')).toContain('Target (assumed): circular orbit at 120 km within 6,000 m.');
  expect(missing.at(-1)).toContain('vehicle: no margin');
});

test('other targets, a world that turns westward', () => {
  expect(describe({ target: { kind: 'suborbital', peakAltitude_m: 1e5 } }).understood.join('\n')).toContain(
    'a peak at 100 km',
  );
  expect(describe({ target: { kind: 'escape', c3_m2_s2: 5e6 } }).understood.join('\n')).toContain(
    'C3 = 5,000,000 m²/s²',
  );
  expect(describe({ target: { kind: 'landing' } }).understood.join('\n')).toContain('Target: a landing.');
  const own = { name: 'Threnby', radius_m: 2e6, surfaceGravity_m_s2: 3, rotationPeriod_s: -9e4 };
  expect(describe({ world: own }).understood.join('\n')).toContain(
    'turns once in 90,000 s, westward, no air',
  );
});
