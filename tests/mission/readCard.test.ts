import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { EARTH, MARS } from '../../src/world/bodies.ts';

const read = (card: unknown) => readMission({ card: { name: 'a.mission.json', text: JSON.stringify(card) } });

function errorOf(run: () => unknown): LossbookError {
  try {
    run();
  } catch (error) {
    if (error instanceof LossbookError) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

const flights = new URL('../flights/', import.meta.url);
const cards = readdirSync(flights).filter((file) => file.endsWith('.mission.json'));

test.each(cards)('the reference card %s reads', (file) => {
  const mission = readMission({ card: { name: file, text: readFileSync(new URL(file, flights), 'utf8') } });
  expect(mission.vehicle?.stages).toHaveLength(2);
  expect(mission.targetKnown).toBe(true);
  expect(mission.site.latitudeKnown && mission.site.azimuthKnown).toBe(true);
});

test('the reference card of Osselby, value by value', () => {
  const text = readFileSync(new URL('osselby-nominal.mission.json', flights), 'utf8');
  const mission = readMission({ card: { name: 'osselby', text } });
  expect(mission.world).toMatchObject({ name: 'Osselby', mu_m3_s2: 6.8231e13, orbitFloor_m: 110_000 });
  expect(mission.site.latitude_rad).toBeCloseTo((5 * Math.PI) / 180, 15);
  expect(mission.target).toMatchObject({ kind: 'orbit', apoapsisAltitude_m: 160_000, tolerance_m: 8000 });
  expect(mission.vehicle?.stages[1]).toMatchObject({
    name: 'upper',
    ispVacuum_s: 335,
    engines: 1,
    throttleMin: 1,
  });
});

test('no card: Earth, the lowest circular orbit above the floor, latitude 0, due east, all of it said', () => {
  const mission = readMission({});
  expect(mission.world).toBe(EARTH);
  expect(mission.vehicle).toBeNull();
  expect(mission.target).toEqual({
    kind: 'orbit',
    apoapsisAltitude_m: 120_000,
    periapsisAltitude_m: 120_000,
    tolerance_m: 6000,
    inclination_rad: null,
    argumentOfPeriapsis_rad: null,
    ascendingNode_rad: null,
  });
  expect(mission.targetKnown).toBe(false);
  expect(mission.site).toEqual({
    latitude_rad: 0,
    longitude_rad: 0,
    altitude_m: 0,
    launchAzimuth_rad: Math.PI / 2,
    latitudeKnown: false,
    longitudeKnown: false,
    azimuthKnown: false,
  });
  expect(mission.assumed).toHaveLength(4);
});

test('what is asked for goes over what the card says', () => {
  const text = JSON.stringify({
    world: 'earth',
    target: { apoapsisAltitude_m: 3e5, periapsisAltitude_m: 2e5, inclination_deg: 51.6 },
  });
  const mission = readMission({ card: { name: 'a', text }, world: 'mars', targetAltitude_m: 180_000 });
  expect(mission.world).toBe(MARS);
  expect(mission.target).toMatchObject({ apoapsisAltitude_m: 180_000, periapsisAltitude_m: 180_000 });
  expect(mission.target.kind === 'orbit' && mission.target.inclination_rad).toBeCloseTo(0.9006, 4);
  expect(mission.targetKnown).toBe(true);
});

test('a target below the floor is kept, and said', () => {
  const mission = readMission({ targetAltitude_m: 90_000 });
  expect(mission.assumed.join(' ')).toContain('lies below the orbit floor of Earth, 120 km');
});

test('kinds of target', () => {
  expect(read({ target: { kind: 'suborbital', peakAltitude_m: 1e5 } }).target).toEqual({
    kind: 'suborbital',
    peakAltitude_m: 1e5,
    tolerance_m: 5000,
  });
  expect(read({ target: { kind: 'escape', c3_m2_s2: 5 } }).target).toEqual({ kind: 'escape', c3_m2_s2: 5 });
  expect(read({ target: { kind: 'escape' } }).target).toEqual({ kind: 'escape', c3_m2_s2: 0 });
  expect(read({ target: { kind: 'landing' } }).target).toEqual({ kind: 'landing' });
  expect(read({ target: { periapsisAltitude_m: 15_000 }, world: 'moon' }).target).toMatchObject({
    apoapsisAltitude_m: 15_000,
    tolerance_m: 1000,
  });
  expect(read({ target: { inclination_deg: 28 } }).targetKnown).toBe(false);
});

test('the whole card is taken over', () => {
  const mission = read({
    $schema: './missionCard.schema.json',
    mission: 'Long Ladder',
    site: { latitude_deg: -10, longitude_deg: 20, altitude_m: 30, launchAzimuth_deg: 45 },
    vehicle: {
      name: 'Bobstay',
      stages: [
        {
          thrustCurve: [
            [0, 0],
            [1, 2000],
            [10, 2000],
            [11, 0],
          ],
          propellantMass_kg: 8,
          dragCoefficient: 0.4,
          boosters: [{ dryMass_kg: 1, propellantMass_kg: 2, thrustVacuum_N: 3, ispVacuum_s: 4 }],
        },
      ],
      jettisons: [{ mass_kg: 5, altitude_m: 1e5 }],
    },
    limits: { dynamicPressure_Pa: 4e4, acceleration_m_s2: 40, angleOfAttackInAir_deg: 5 },
    flight: { pilot: 'Tansy', attempt: 3, date: 'spring', notes: 'windy' },
    return: { mass_kg: 100, parachutes: [{ dragArea_m2: 9, openAltitude_m: 3000 }] },
  });
  expect(mission.name).toBe('Long Ladder');
  const [stage] = mission.vehicle?.stages ?? [];
  expect(stage).toMatchObject({ name: 'stage 1', thrustVacuum_N: 2000, dragCoefficient: [[0, 0.4]] });
  expect(stage?.ispVacuum_s).toBeCloseTo(20_000 / (9.80665 * 8), 10);
  expect(stage?.boosters[0]).toMatchObject({
    name: 'booster 1',
    count: 1,
    ignitionTime_s: 0,
    separationTime_s: null,
  });
  expect(mission.vehicle?.jettisons[0]).toEqual({
    name: 'part 1',
    mass_kg: 5,
    time_s: null,
    altitude_m: 1e5,
  });
  expect(mission.limits.angleOfAttackInAir_rad).toBeCloseTo(0.0872665, 6);
  expect(mission.flight).toEqual({ pilot: 'Tansy', attempt: 3, date: 'spring', notes: 'windy' });
  expect(mission.returnVehicle?.parachutes).toEqual([
    { count: 1, dragArea_m2: 9, openAltitude_m: 3000, fullAltitude_m: null },
  ]);
});

test('a sea-level specific impulse stands for the exit area', () => {
  const card = { thrustVacuum_N: 7.6e6, ispVacuum_s: 311 };
  const area = read({ vehicle: { stages: [{ ...card, ispSeaLevel_s: 293.586 }] } }).vehicle?.stages[0]
    ?.exitArea_m2;
  // Tvac − p₀·Ae = ṁ·g0·Isp_sl
  expect(7.6e6 - 101_325 * (area ?? 0)).toBeCloseTo((7.6e6 / 311) * 293.586, 4);
  const both = read({ vehicle: { stages: [{ ...card, ispSeaLevel_s: 280, exitArea_m2: 4 }] } });
  expect(both.vehicle?.stages[0]?.exitArea_m2).toBe(4);
  expect(both.assumed.join(' ')).toContain('left aside');
});

test('null is the same as left out', () => {
  const nothing = read({});
  const nulls = read({
    mission: null,
    world: null,
    site: null,
    target: null,
    vehicle: null,
    limits: null,
    flight: null,
    return: null,
  });
  expect(nulls).toEqual(nothing);
  expect(
    read({
      target: { kind: null, apoapsisAltitude_m: 2e5, periapsisAltitude_m: null, inclination_deg: null },
    }).target,
  ).toMatchObject({ kind: 'orbit', periapsisAltitude_m: 2e5 });
});

test('an unknown field is an error that names its path and the nearest field', () => {
  const error = errorOf(() => read({ vehicle: { stages: [{}, { dryMas_kg: 3 }] } }));
  expect(error.code).toBe('card-unknown-field');
  expect(error.what).toBe(
    'the mission card has an unknown field “vehicle.stages[1].dryMas_kg”; did you mean “dryMass_kg”?',
  );
  expect(error.where.file).toBe('a.mission.json');
  expect(errorOf(() => read({ world: { radus_m: 1, atmosphere: null } })).what).toContain(
    '“world.radus_m”; did you mean “radius_m”?',
  );
});

const air = { model: 'exponential', surfacePressure_Pa: 1, surfaceDensity_kg_m3: 1, scaleHeight_m: 1 };
const own = { radius_m: 1e6, surfaceGravity_m_s2: 2 };

test.each([
  [
    { vehicle: { stages: [{ dryMass_kg: -3 }] } },
    'vehicle.stages[0].dryMass_kg = -3, but it must be a number not below 0',
  ],
  [{ vehicle: { payload_kg: '12 t' } }, 'vehicle.payload_kg = "12 t", but it must be a number'],
  [{ vehicle: { stages: {} } }, 'vehicle.stages = {}, but it must be a list of stages'],
  [{ vehicle: [] }, 'vehicle = [], but it must be an object'],
  [
    { vehicle: { stages: [{ engines: 1.5 }] } },
    'vehicle.stages[0].engines = 1.5, but it must be a whole number',
  ],
  [
    {
      vehicle: {
        stages: [
          {
            dragCoefficient: [
              [1, 0.3],
              [1, 0.4],
            ],
          },
        ],
      },
    },
    'the first of each pair rising',
  ],
  [{ vehicle: { stages: [{ dragCoefficient: 'low' }] } }, 'a number, or pairs [Mach, drag coefficient]'],
  [{ vehicle: { stages: [{ dragCoefficient: [] }] } }, 'a number, or pairs [Mach, drag coefficient]'],
  [{ vehicle: { stages: [{ ispVacuum_s: 300, ispSeaLevel_s: 301 }] } }, 'not above ispVacuum_s = 300'],
  [
    {
      vehicle: {
        stages: [
          {
            thrustCurve: [
              [0, 0],
              [1, 0],
            ],
          },
        ],
      },
    },
    'a curve with thrust above 0',
  ],
  [
    { vehicle: { stages: [{ boosters: [{ dryMass_kg: 1 }] }] } },
    'vehicle.stages[0].boosters[0].propellantMass_kg = nothing, but it must be given',
  ],
  [
    {
      vehicle: {
        stages: [
          {
            boosters: [
              {
                dryMass_kg: 1,
                propellantMass_kg: 1,
                thrustVacuum_N: 1,
                ispVacuum_s: 1,
                ignitionTime_s: 9,
                separationTime_s: 9,
              },
            ],
          },
        ],
      },
    },
    'after ignition at 9 s',
  ],
  [{ vehicle: { jettisons: [{ mass_kg: 1 }] } }, 'exactly one of time_s and altitude_m'],
  [
    { vehicle: { jettisons: [{ mass_kg: 1, time_s: 1, altitude_m: 1 }] } },
    'exactly one of time_s and altitude_m',
  ],
  [
    { target: { kind: 'orbt' } },
    'target.kind = "orbt", but it must be one of orbit, suborbital, escape, landing',
  ],
  [{ target: { kind: 'suborbital' } }, 'target.peakAltitude_m = nothing'],
  [
    { target: { apoapsisAltitude_m: 1e5, periapsisAltitude_m: 2e5 } },
    'not below target.periapsisAltitude_m = 200000',
  ],
  [{ site: { latitude_deg: 91 } }, 'site.latitude_deg = 91, but it must be a number from -90 to 90'],
  [
    { world: { ...own, rotationPeriod_s: 0 } },
    'world.rotationPeriod_s = 0, but it must be a number other than 0',
  ],
  [{ world: { ...own, orbitFloor_m: 2e7 } }, 'world.orbitFloor_m = 20000000'],
  [{ world: { ...own, atmosphere: { model: 'thin' } } }, 'an atmosphere whose model is'],
  [
    { world: { ...own, atmosphere: { ...air, scaleHeight_m: 0 } } },
    'world.atmosphere.scaleHeight_m = 0, but it must be a number above 0',
  ],
  [{ world: { ...own, atmosphere: { model: 'table', rows: [[0, 1, 1]] } } }, 'two or more'],
  [
    {
      world: {
        ...own,
        atmosphere: {
          model: 'table',
          rows: [
            [0, 1, 1],
            [0, 1, 1],
          ],
        },
      },
    },
    'rows with rising altitude',
  ],
  [{ world: {} }, 'world.radius_m = nothing, but it must be given'],
  [{ world: 3 }, 'world = 3, but it must be'],
  [[1], 'top level = [1], but it must be an object of fields'],
])('%j is refused', (card, expected) => {
  const error = errorOf(() => read(card));
  expect(error.code).toBe('card-bad-value');
  expect(error.what).toContain(expected);
  expect(error.where.file).toBe('a.mission.json');
});

test('an unknown world is refused with the nearest name', () => {
  expect(errorOf(() => read({ world: 'eart' })).what).toBe('there is no world “eart”; did you mean “earth”?');
  expect(errorOf(() => readMission({ world: 'mras' })).code).toBe('world-unknown');
});

test('broken JSON is refused with the line; a byte-order mark is not', () => {
  const error = errorOf(() =>
    readMission({ card: { name: 'b.json', text: '{\n"mission": "x",\n  "site" 3}' } }),
  );
  expect(error.code).toBe('card-json-broken');
  expect(error.where).toEqual({ file: 'b.json', row: 3 });
  expect(errorOf(() => readMission({ card: { name: 'b.json', text: '' } })).code).toBe('card-json-broken');
  expect(readMission({ card: { name: 'c', text: '\uFEFF{"mission":"x"}' } }).name).toBe('x');
});
