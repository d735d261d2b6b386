import * as v from 'valibot';
import { suggestion } from '../suggest.ts';

/**
 * The mission card's fields, kinds and ranges: the one source that the reader checks against. The published
 * `missionCard.schema.json` says the same for editors, and a test holds the two together. A message here is
 * what the value must be; for an unknown field it is the suggestion. Null is the same as left out.
 */

const anObject = 'an object of fields { … }';

/** An object with just these fields: anything else is an unknown field, answered with the nearest name. */
function openFields<const T extends v.ObjectEntries>(entries: T) {
  return v.strictObject(entries, (issue) => {
    if (issue.expected === 'never') {
      return suggestion(String(issue.path?.at(-1)?.key ?? ''), Object.keys(entries));
    }
    return issue.expected === 'Object' ? anObject : 'given';
  });
}

/** The same, and no list, which to the language is an object too. */
function fields<const T extends v.ObjectEntries>(entries: T) {
  const schema = openFields(entries);
  return v.lazy((input) => (Array.isArray(input) ? v.never(anObject) : schema));
}

const text = v.string('a text in quotes');
const number = v.pipe(v.number('a number'), v.finite('a number'));
const positive = v.pipe(number, v.gtValue(0, 'a number above 0'));
const notNegative = v.pipe(number, v.minValue(0, 'a number not below 0'));
const between = (low: number, high: number) => {
  const expected = `a number from ${low} to ${high}`;
  return v.pipe(number, v.minValue(low, expected), v.maxValue(high, expected));
};
const whole = (least: number) => {
  const expected = `a whole number of ${least} or more`;
  return v.pipe(v.number(expected), v.integer(expected), v.minValue(least, expected));
};

/** Pairs whose first member rises, such as Mach and drag coefficient. */
function curve<T extends v.GenericSchema<number>>(second: T, least: number, expected: string) {
  return v.pipe(
    v.array(v.strictTuple([notNegative, second], expected), expected),
    v.minLength(least, expected),
    v.check(
      (rows) => rising(rows.map((row) => row[0] as number)),
      `${expected}, the first of each pair rising`,
    ),
  );
}

function rising(values: readonly number[]): boolean {
  return values.every((value, i) => i === 0 || value > (values[i - 1] ?? value));
}

const atmosphereRows = 'rows [altitude_m, pressure_Pa, density_kg_m3], two or more';
const airModels = v.variant(
  'model',
  [
    openFields({ model: v.literal('us-standard-1976') }),
    openFields({
      model: v.literal('exponential'),
      surfacePressure_Pa: positive,
      surfaceDensity_kg_m3: positive,
      scaleHeight_m: positive,
      top_m: v.nullish(positive),
      heatCapacityRatio: v.nullish(between(1, 2)),
    }),
    openFields({
      model: v.literal('table'),
      rows: v.pipe(
        v.array(v.strictTuple([number, positive, positive], atmosphereRows), atmosphereRows),
        v.minLength(2, atmosphereRows),
        v.check((rows) => rising(rows.map((row) => row[0])), 'rows with rising altitude'),
      ),
      top_m: v.nullish(positive),
      heatCapacityRatio: v.nullish(between(1, 2)),
    }),
  ],
  'an atmosphere whose model is us-standard-1976, exponential or table',
);
const atmosphere = v.lazy((input) => (Array.isArray(input) ? v.never(anObject) : airModels));

const ownWorld = fields({
  name: v.nullish(text),
  gravitationalParameter_m3_s2: v.nullish(positive),
  surfaceGravity_m_s2: v.nullish(positive),
  radius_m: v.nullish(positive),
  rotationPeriod_s: v.nullish(v.pipe(number, v.notValue(0, 'a number other than 0'))),
  orbitFloor_m: v.nullish(notNegative),
  ellipsoid: v.nullish(
    fields({
      equatorialRadius_m: positive,
      flattening: v.pipe(
        number,
        v.minValue(0, 'a number from 0 up to 1'),
        v.ltValue(1, 'a number from 0 up to 1'),
      ),
    }),
  ),
  atmosphere: v.nullish(atmosphere),
});

const world = v.lazy((input) => (typeof input === 'string' ? text : ownWorld));

const site = fields({
  latitude_deg: v.nullish(between(-90, 90)),
  longitude_deg: v.nullish(between(-360, 360)),
  altitude_m: v.nullish(number),
  launchAzimuth_deg: v.nullish(between(-360, 360)),
});

const targetKinds = ['orbit', 'suborbital', 'escape', 'landing'] as const;

const target = fields({
  kind: v.nullish(v.picklist(targetKinds, 'one of orbit, suborbital, escape, landing')),
  apoapsisAltitude_m: v.nullish(positive),
  periapsisAltitude_m: v.nullish(positive),
  tolerance_m: v.nullish(positive),
  inclination_deg: v.nullish(between(0, 180)),
  argumentOfPeriapsis_deg: v.nullish(between(-360, 360)),
  ascendingNode_deg: v.nullish(between(-360, 360)),
  peakAltitude_m: v.nullish(positive),
  c3_m2_s2: v.nullish(notNegative),
});

const booster = fields({
  name: v.nullish(text),
  count: v.nullish(whole(1)),
  dryMass_kg: notNegative,
  propellantMass_kg: positive,
  thrustVacuum_N: positive,
  ispVacuum_s: positive,
  exitArea_m2: v.nullish(notNegative),
  ignitionTime_s: v.nullish(notNegative),
  separationTime_s: v.nullish(notNegative),
});

const dragNodes = 'a number, or pairs [Mach, drag coefficient]';

const stage = fields({
  name: v.nullish(text),
  dryMass_kg: v.nullish(notNegative),
  propellantMass_kg: v.nullish(notNegative),
  thrustVacuum_N: v.nullish(positive),
  ispVacuum_s: v.nullish(positive),
  ispSeaLevel_s: v.nullish(positive),
  exitArea_m2: v.nullish(notNegative),
  engines: v.nullish(whole(1)),
  throttleMin: v.nullish(between(0, 1)),
  ignitions: v.nullish(whole(1)),
  referenceArea_m2: v.nullish(positive),
  dragCoefficient: v.nullish(
    v.lazy((input) => (Array.isArray(input) ? curve(notNegative, 1, dragNodes) : numberOr(dragNodes))),
  ),
  thrustCurve: v.nullish(curve(notNegative, 2, 'pairs [time_s, thrust_N], two or more')),
  boosters: v.nullish(v.array(booster, 'a list of boosters [ … ]')),
});

function numberOr(expected: string) {
  return v.pipe(v.number(expected), v.finite(expected), v.minValue(0, 'a number not below 0'));
}

const jettison = fields({
  name: v.nullish(text),
  mass_kg: positive,
  time_s: v.nullish(notNegative),
  altitude_m: v.nullish(notNegative),
});

const vehicle = fields({
  name: v.nullish(text),
  payload_kg: v.nullish(notNegative),
  stages: v.nullish(v.array(stage, 'a list of stages [ … ], the first to burn first')),
  jettisons: v.nullish(v.array(jettison, 'a list of parts [ … ]')),
  standardErrors_percent: v.nullish(
    fields({
      isp: v.nullish(between(0, 100)),
      exitArea: v.nullish(between(0, 100)),
      dragArea: v.nullish(between(0, 100)),
    }),
  ),
});

const returnVehicle = fields({
  mass_kg: v.nullish(positive),
  referenceArea_m2: v.nullish(positive),
  dragCoefficient: v.nullish(notNegative),
  noseRadius_m: v.nullish(positive),
  parachutes: v.nullish(
    v.array(
      fields({
        count: v.nullish(whole(1)),
        dragArea_m2: positive,
        openAltitude_m: v.nullish(number),
        fullAltitude_m: v.nullish(number),
      }),
      'a list of parachutes [ … ]',
    ),
  ),
});

/** A whole mission card as its JSON stands. */
export const missionCardSchema = fields({
  $schema: v.nullish(text),
  mission: v.nullish(text),
  world: v.nullish(world),
  site: v.nullish(site),
  target: v.nullish(target),
  vehicle: v.nullish(vehicle),
  limits: v.nullish(
    fields({
      dynamicPressure_Pa: v.nullish(positive),
      acceleration_m_s2: v.nullish(positive),
      angleOfAttackInAir_deg: v.nullish(between(0, 180)),
    }),
  ),
  flight: v.nullish(
    fields({
      pilot: v.nullish(text),
      attempt: v.nullish(whole(1)),
      date: v.nullish(text),
      notes: v.nullish(text),
    }),
  ),
  return: v.nullish(returnVehicle),
});

/** A mission card whose fields have been checked. */
export type MissionCard = v.InferOutput<typeof missionCardSchema>;
export type StageCard = v.InferOutput<typeof stage>;
export type BoosterCard = v.InferOutput<typeof booster>;
export type JettisonCard = v.InferOutput<typeof jettison>;
export type TargetCard = v.InferOutput<typeof target>;
export type VehicleCard = v.InferOutput<typeof vehicle>;
export type ReturnCard = v.InferOutput<typeof returnVehicle>;
export type OwnWorldCard = v.InferOutput<typeof ownWorld>;
