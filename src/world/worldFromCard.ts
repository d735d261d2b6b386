import { LossbookError, type Where } from '../errors.ts';
import { exponentialAtmosphere } from './atmosphere/exponential.ts';
import { tableAtmosphere } from './atmosphere/table.ts';
import { US_STANDARD_ATMOSPHERE_1976 } from './atmosphere/usStandard1976.ts';
import { EARTH_ORBIT_FLOOR_M } from './bodies.ts';
import type { Atmosphere, World } from './types.ts';

/** A world as a mission card defines it; the reader of the card has checked each value's kind and sign. */
export interface WorldSpec {
  readonly name?: string | undefined;
  readonly gravitationalParameter_m3_s2?: number | undefined;
  /** At the radius; may stand for the gravitational parameter. */
  readonly surfaceGravity_m_s2?: number | undefined;
  readonly radius_m?: number | undefined;
  /** Negative for a world that turns westward. */
  readonly rotationPeriod_s?: number | undefined;
  readonly orbitFloor_m?: number | undefined;
  readonly ellipsoid?: { readonly equatorialRadius_m: number; readonly flattening: number } | undefined;
  readonly atmosphere?: AtmosphereSpec | null | undefined;
}

/** The air of a world as a mission card defines it. */
export type AtmosphereSpec =
  | { readonly model: 'us-standard-1976' }
  | {
      readonly model: 'exponential';
      readonly surfacePressure_Pa: number;
      readonly surfaceDensity_kg_m3: number;
      readonly scaleHeight_m: number;
      readonly top_m?: number | undefined;
      readonly heatCapacityRatio?: number | undefined;
    }
  | {
      readonly model: 'table';
      readonly rows: readonly (readonly [number, number, number])[];
      readonly top_m?: number | undefined;
      readonly heatCapacityRatio?: number | undefined;
    };

/** A world of the card, and one sentence for each thing that the card left open. */
export interface WorldOfCard {
  readonly world: World;
  readonly assumed: readonly string[];
}

/** Of a diatomic gas such as Earth's air. */
const DIATOMIC_HEAT_CAPACITY_RATIO = 1.4;

/** Scale heights that an exponential atmosphere without a top is followed up: e⁻¹⁵, 3 parts in 10 million. */
const SCALE_HEIGHTS_TO_TOP = 15;

const CARD = 'the mission card';

/**
 * The world that a mission card defines.
 * @param where the card's file, for messages.
 * @throws LossbookError card-bad-value where radius or gravity is missing, or the values contradict each other.
 */
export function worldFromCard(spec: WorldSpec, where: Where = {}): WorldOfCard {
  const assumed: string[] = [];
  const name = spec.name ?? 'World of the card';
  const radius_m = spec.radius_m ?? spec.ellipsoid?.equatorialRadius_m;
  if (radius_m === undefined) throw missing('world.radius_m', 'given', where);
  const mu_m3_s2 = gravitationalParameter(spec, radius_m, where);
  const atmosphere = airOf(spec.atmosphere ?? null, name, assumed);
  if (spec.atmosphere === undefined) assumed.push(`${name} is taken to have no air: the card gives none.`);
  if (spec.rotationPeriod_s === undefined) {
    assumed.push(`${name} is taken not to turn: the card gives no rotationPeriod_s.`);
  }
  let orbitFloor_m = spec.orbitFloor_m;
  if (orbitFloor_m === undefined) {
    if (atmosphere === null) {
      orbitFloor_m = 0;
      assumed.push(`The orbit floor of ${name} is taken to be the ground: it has no air.`);
    } else if (atmosphere === US_STANDARD_ATMOSPHERE_1976) {
      orbitFloor_m = EARTH_ORBIT_FLOOR_M;
      assumed.push(`The orbit floor of ${name} is taken to be 120 km, as on Earth.`);
    } else {
      orbitFloor_m = atmosphere.top_m;
      assumed.push(`The orbit floor of ${name} is taken to be the top of its air.`);
    }
  }
  const world: World = {
    name,
    mu_m3_s2,
    radius_m,
    spin_rad_s: spec.rotationPeriod_s === undefined ? 0 : (2 * Math.PI) / spec.rotationPeriod_s,
    orbitFloor_m,
    ellipsoid: spec.ellipsoid ?? null,
    atmosphere,
    source: CARD,
  };
  return { world, assumed };
}

function missing(field: string, expected: string, where: Where): LossbookError {
  return new LossbookError('card-bad-value', { field, value: 'nothing', expected }, where);
}

/** μ as given, or g·R²; both are welcome if they agree to 1 %. */
function gravitationalParameter(spec: WorldSpec, radius_m: number, where: Where): number {
  const { gravitationalParameter_m3_s2: mu, surfaceGravity_m_s2: g } = spec;
  const fromGravity = g === undefined ? undefined : g * radius_m * radius_m;
  if (mu === undefined) {
    if (fromGravity !== undefined) return fromGravity;
    throw missing('world.gravitationalParameter_m3_s2', 'given, or surfaceGravity_m_s2 in its place', where);
  }
  if (fromGravity !== undefined && Math.abs(fromGravity / mu - 1) > 0.01) {
    throw new LossbookError(
      'card-bad-value',
      {
        field: 'world.surfaceGravity_m_s2',
        value: g ?? '',
        expected: `left out, or ${(mu / radius_m ** 2).toPrecision(5)} as gravitationalParameter_m3_s2 and radius_m give`,
      },
      where,
    );
  }
  return mu;
}

function airOf(spec: AtmosphereSpec | null, name: string, assumed: string[]): Atmosphere | null {
  if (spec === null) return null;
  if (spec.model === 'us-standard-1976') return US_STANDARD_ATMOSPHERE_1976;
  if (spec.heatCapacityRatio === undefined) {
    assumed.push(
      `The heat capacity ratio of ${name}’s air is taken to be ${DIATOMIC_HEAT_CAPACITY_RATIO}; it sets the Mach number.`,
    );
  }
  const heatCapacityRatio = spec.heatCapacityRatio ?? DIATOMIC_HEAT_CAPACITY_RATIO;
  if (spec.model === 'exponential') {
    if (spec.top_m === undefined) {
      assumed.push(`The air of ${name} is taken to end at ${SCALE_HEIGHTS_TO_TOP} scale heights.`);
    }
    const top_m = spec.top_m ?? SCALE_HEIGHTS_TO_TOP * spec.scaleHeight_m;
    return exponentialAtmosphere({ ...spec, top_m, heatCapacityRatio }, CARD);
  }
  if (spec.top_m === undefined)
    assumed.push(`The air of ${name} is taken to end at the last row of its table.`);
  const top_m = spec.top_m ?? spec.rows.at(-1)?.[0] ?? 0;
  return tableAtmosphere({ rows: spec.rows, top_m, heatCapacityRatio }, CARD);
}
