import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LossbookError } from '../../src/errors.ts';
import schema from '../../src/mission/missionCard.schema.json' with { type: 'json' };
import { readMission } from '../../src/mission/readCard.ts';

type Schema = Record<string, unknown>;

/** The keywords of JSON Schema that the published schema uses, and no others. */
const keywords: Record<string, (limit: never, value: unknown, schema: Schema) => boolean> = {
  type: (limit: string | string[], value) => [limit].flat().some((type) => isOfType(type, value)),
  enum: (limit: unknown[], value) => limit.includes(value),
  const: (limit: unknown, value) => value === limit,
  not: (limit: Schema, value) => !accepts(limit, value),
  anyOf: (limit: Schema[], value) => limit.some((each) => accepts(each, value)),
  oneOf: (limit: Schema[], value) =>
    !isOfType('object', value) || limit.filter((each) => accepts(each, value)).length === 1,
  pattern: (limit: string, value) => typeof value !== 'string' || new RegExp(limit, 'u').test(value),
  minimum: (limit: number, value) => typeof value !== 'number' || value >= limit,
  maximum: (limit: number, value) => typeof value !== 'number' || value <= limit,
  exclusiveMinimum: (limit: number, value) => typeof value !== 'number' || value > limit,
  exclusiveMaximum: (limit: number, value) => typeof value !== 'number' || value < limit,
  minItems: (limit: number, value) => !Array.isArray(value) || value.length >= limit,
  maxItems: (limit: number, value) => !Array.isArray(value) || value.length <= limit,
  items: (limit: Schema, value) => !Array.isArray(value) || value.every((item) => accepts(limit, item)),
  prefixItems: (limit: Schema[], value) =>
    !Array.isArray(value) || limit.every((each, i) => i >= value.length || accepts(each, value[i])),
  required: (limit: string[], value) =>
    !isOfType('object', value) || limit.every((key) => Object.hasOwn(value as object, key)),
  properties: (limit: Record<string, Schema>, value) =>
    !isOfType('object', value) ||
    Object.entries(value as object).every(([key, v]) => limit[key] === undefined || accepts(limit[key], v)),
  additionalProperties: (_: false, value, whole) =>
    !isOfType('object', value) ||
    Object.keys(value as object).every((key) => Object.hasOwn(whole.properties as object, key)),
  description: () => true,
  title: () => true,
  $schema: () => true,
};

function isOfType(type: string, value: unknown): boolean {
  if (type === 'null') return value === null;
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value);
  if (type === 'integer') return Number.isInteger(value);
  return typeof value === type;
}

function accepts(rules: Schema, value: unknown): boolean {
  return Object.entries(rules).every(([keyword, limit]) => {
    const check = keywords[keyword];
    if (check === undefined) throw new Error(`the test does not know ${keyword}`);
    return check(limit as never, value, rules);
  });
}

const schemaAccepts = (card: unknown) => accepts(schema as Schema, card);

function readerAccepts(card: unknown): boolean {
  try {
    readMission({ card: { name: 'card', text: JSON.stringify(card) } });
    return true;
  } catch (error) {
    if (error instanceof LossbookError) return false;
    throw error;
  }
}

/** Every place of the schema that holds fields: path → field → its own schema. */
function fieldsOf(rules: Schema, path = 'card'): [string, Schema][] {
  const found: [string, Schema][] = [];
  for (const [key, field] of Object.entries((rules.properties ?? {}) as Record<string, Schema>)) {
    found.push([`${path}.${key}`, field], ...fieldsOf(field, `${path}.${key}`));
  }
  const options = ((rules.anyOf ?? []) as Schema[]).filter((option) => option.additionalProperties === false);
  for (const [i, option] of options.entries()) found.push(...fieldsOf(option, `${path}|${i}`));
  if (rules.items) found.push(...fieldsOf(rules.items as Schema, `${path}[]`));
  return found;
}

test('every field is documented', () => {
  const fields = fieldsOf(schema as Schema);
  expect(fields.length).toBe(94);
  for (const [path, field] of fields) expect(field.description, path).toBeTypeOf('string');
});

test('the schema asks for no field at the top and allows none that it does not name', () => {
  expect(schemaAccepts({})).toBe(true);
  expect(schemaAccepts({ misson: 'x' })).toBe(false);
});

/** A card that uses every field but those of the other models of air. */
const whole = {
  $schema: 'x',
  mission: 'Long Ladder',
  world: {
    name: 'Threnby',
    gravitationalParameter_m3_s2: 1e13,
    surfaceGravity_m_s2: 2.5,
    radius_m: 2e6,
    rotationPeriod_s: -9e4,
    orbitFloor_m: 9e4,
    ellipsoid: { equatorialRadius_m: 2e6, flattening: 0.01 },
    atmosphere: {
      model: 'exponential',
      surfacePressure_Pa: 9e4,
      surfaceDensity_kg_m3: 1.1,
      scaleHeight_m: 7e3,
      top_m: 9e4,
      heatCapacityRatio: 1.4,
    },
  },
  site: { latitude_deg: 5, longitude_deg: -80, altitude_m: -20, launchAzimuth_deg: 80 },
  target: {
    kind: 'orbit',
    apoapsisAltitude_m: 2e5,
    periapsisAltitude_m: 1.5e5,
    tolerance_m: 5e3,
    inclination_deg: 30,
    argumentOfPeriapsis_deg: 10,
    ascendingNode_deg: -20,
    peakAltitude_m: 1e5,
    c3_m2_s2: 1e6,
  },
  vehicle: {
    name: 'Bobstay',
    payload_kg: 900,
    stages: [
      {
        name: 'lower',
        dryMass_kg: 1e3,
        propellantMass_kg: 9e3,
        thrustVacuum_N: 2e5,
        ispVacuum_s: 290,
        ispSeaLevel_s: 260,
        exitArea_m2: 0.5,
        engines: 3,
        throttleMin: 0.4,
        ignitions: 2,
        referenceArea_m2: 3,
        dragCoefficient: [
          [0, 0.3],
          [1, 0.5],
        ],
        thrustCurve: [
          [0, 0],
          [1, 2e5],
          [9, 0],
        ],
        boosters: [
          {
            name: 'strap-on',
            count: 2,
            dryMass_kg: 100,
            propellantMass_kg: 500,
            thrustVacuum_N: 3e4,
            ispVacuum_s: 250,
            exitArea_m2: 0.1,
            ignitionTime_s: 1,
            separationTime_s: 40,
          },
        ],
      },
    ],
    jettisons: [{ name: 'fairing', mass_kg: 80, altitude_m: 9e4 }],
    standardErrors_percent: { isp: 0.5, exitArea: 20, dragArea: null },
  },
  limits: { dynamicPressure_Pa: 4e4, acceleration_m_s2: 40, angleOfAttackInAir_deg: 5 },
  flight: { pilot: 'Medlar', attempt: 2, date: '1 May', notes: '-' },
  return: {
    mass_kg: 500,
    referenceArea_m2: 2,
    dragCoefficient: 1.2,
    noseRadius_m: 0.5,
    parachutes: [{ count: 2, dragArea_m2: 60, openAltitude_m: 3e3, fullAltitude_m: 2e3 }],
  },
};
const table = {
  model: 'table',
  rows: [
    [0, 600, 0.01],
    [5e4, 3, 1e-4],
  ],
  top_m: 9e4,
  heatCapacityRatio: 1.3,
};
const cards: unknown[] = [
  whole,
  { ...whole, world: { ...whole.world, atmosphere: table } },
  { ...whole, world: { ...whole.world, atmosphere: { model: 'us-standard-1976' } } },
  { ...whole, world: 'Mars', target: { kind: 'suborbital', peakAltitude_m: 1e5 } },
];

test('a card with every field, and the reference cards, are accepted by both', () => {
  for (const card of cards) expect([schemaAccepts(card), readerAccepts(card)]).toEqual([true, true]);
  for (const name of ['earth-nominal', 'osselby-short']) {
    const text = readFileSync(new URL(`../flights/${name}.mission.json`, import.meta.url), 'utf8');
    expect(schemaAccepts(JSON.parse(text))).toBe(true);
  }
});

/** All paths into a value. */
function pathsOf(value: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, item]) =>
    pathsOf(item, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return path.length > 0 ? [path, ...inner] : inner;
}

function changed(
  card: unknown,
  path: (string | number)[],
  change: (holder: never, key: never) => void,
): unknown {
  const copy = structuredClone(card);
  const holder = path.slice(0, -1).reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], copy);
  change(holder as never, path.at(-1) as never);
  return copy;
}

const values = [
  null,
  0,
  -1,
  0.5,
  1,
  2,
  1e9,
  -1e9,
  '',
  'earth',
  'eart',
  true,
  [],
  {},
  [1],
  [[1, 2]],
  [[0, 1, 1]],
  { a: 1 },
];

// What the reader alone can see (nodes that rise, values that contradict each other) is not in the schema: for
// these changes it may refuse what the schema takes. It never takes what the schema refuses.
const readerAlone =
  /rising|not below target|not above ispVacuum_s|after ignition|surfaceGravity|world\.radius_m|orbitFloor|curve with thrust/u;

test('both accept and refuse the same cards, one value changed, removed or added', () => {
  for (const card of cards) {
    for (const path of pathsOf(card)) {
      const variants = [
        ...values.map((value) =>
          changed(card, path, (holder: Record<string, unknown>, key: string) => {
            holder[key] = value;
          }),
        ),
        changed(card, path, (holder: Record<string, unknown>, key: string) => {
          if (Array.isArray(holder)) holder.splice(Number(key), 1);
          else delete holder[key];
        }),
        changed(card, path, (holder: Record<string, unknown>, key: string) => {
          if (Array.isArray(holder)) holder.push(1);
          else holder[`${key}x`] = 1;
        }),
      ];
      for (const variant of variants) agree(variant);
    }
  }
});

test('both accept and refuse the same cards, several values changed', () => {
  const paths = pathsOf(whole);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 0, max: paths.length - 1 }), fc.constantFrom(...values)), {
        minLength: 2,
        maxLength: 5,
      }),
      (changes) => {
        let card: unknown = whole;
        for (const [index, value] of changes) {
          try {
            card = changed(card, paths[index] ?? [], (holder: Record<string, unknown>, key: string) => {
              holder[key] = value;
            });
          } catch {
            // An earlier change took the place away that this one is about.
          }
        }
        agree(card);
      },
    ),
    { numRuns: 500, seed: 7 },
  );
});

function agree(card: unknown): void {
  const bySchema = schemaAccepts(card);
  try {
    readMission({ card: { name: 'card', text: JSON.stringify(card) } });
    expect(bySchema, JSON.stringify(card)).toBe(true);
  } catch (error) {
    if (!(error instanceof LossbookError)) throw error;
    if (bySchema && !readerAlone.test(error.what))
      throw new Error(`the schema takes it, but ${error.message}`);
  }
}
