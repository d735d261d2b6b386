import { worldByName } from '../world/bodies.ts';
import type { World } from '../world/types.ts';
import { type WorldOfCard, worldFromCard } from '../world/worldFromCard.ts';
import { badValue } from './badValue.ts';
import type { MissionCard, OwnWorldCard, ReturnCard } from './cardSchema.ts';
import { parseCard } from './parseCard.ts';
import { resolveTarget } from './resolveTarget.ts';
import { resolveVehicle } from './resolveVehicle.ts';
import type { Mission, ReturnVehicle } from './types.ts';

/** What a mission is read from; all of it optional. */
export interface MissionRequest {
  /** The card's file name, for messages, and its text. */
  readonly card?: { readonly name: string; readonly text: string };
  /** `earth`, `moon` or `mars`; over the card's world. */
  readonly world?: string;
  /** World that the log names, taken where neither the card nor `world` names one. */
  readonly worldOfLog?: string;
  /** Altitude of a circular target orbit, m; over the card's target. */
  readonly targetAltitude_m?: number;
}

const DEGREE = Math.PI / 180;

/**
 * The mission that a card describes, its gaps filled by assumptions that `assumed` states one by one. Without
 * a card: Earth, no vehicle, and the lowest circular orbit above the floor for a target.
 * @throws LossbookError card-json-broken, card-unknown-field, card-bad-value, world-unknown.
 */
export function readMission(request: MissionRequest): Mission {
  const file = request.card?.name;
  const card: MissionCard = request.card ? parseCard(request.card.name, request.card.text) : {};
  const assumed: string[] = [];
  const world = worldOf(card, request, file, assumed);
  const site = siteOf(card.site ?? {}, assumed);
  const { target, known } = resolveTarget(
    card.target ?? null,
    request.targetAltitude_m,
    world,
    file,
    assumed,
  );
  return {
    name: card.mission ?? null,
    world,
    site,
    target,
    targetKnown: known,
    vehicle: card.vehicle ? resolveVehicle(card.vehicle, file, assumed) : null,
    limits: {
      dynamicPressure_Pa: card.limits?.dynamicPressure_Pa ?? null,
      acceleration_m_s2: card.limits?.acceleration_m_s2 ?? null,
      angleOfAttackInAir_rad: radians(card.limits?.angleOfAttackInAir_deg),
    },
    flight: {
      pilot: card.flight?.pilot ?? null,
      attempt: card.flight?.attempt ?? null,
      date: card.flight?.date ?? null,
      notes: card.flight?.notes ?? null,
    },
    returnVehicle: card.return ? returnOf(card.return) : null,
    assumed,
  };
}

function radians(degrees: number | null | undefined): number | null {
  return degrees === null || degrees === undefined ? null : degrees * DEGREE;
}

function worldOf(
  card: MissionCard,
  { world: asked, worldOfLog }: MissionRequest,
  file: string | undefined,
  assumed: string[],
): World {
  if (asked !== undefined) return worldByName(asked);
  if (typeof card.world === 'string') return worldByName(card.world);
  if (card.world) {
    const own = ownWorld(card.world, file);
    assumed.push(...own.assumed);
    return own.world;
  }
  if (worldOfLog !== undefined) {
    const world = worldByName(worldOfLog);
    assumed.push(`The world is taken to be ${world.name}, which the log names as its centre.`);
    return world;
  }
  assumed.push('The world is taken to be Earth: nothing names one.');
  return worldByName('earth');
}

function ownWorld(card: OwnWorldCard, file: string | undefined): WorldOfCard {
  const { ellipsoid, atmosphere, ...plain } = card;
  const given = Object.fromEntries(Object.entries(plain).filter(([, value]) => value !== null));
  const own = {
    ...given,
    ...(ellipsoid ? { ellipsoid } : {}),
    // A null atmosphere says that there is no air; one left out is an assumption.
    ...(atmosphere === undefined
      ? {}
      : { atmosphere: atmosphere === null ? null : withoutNulls(atmosphere) }),
  };
  const result = worldFromCard(own, file === undefined ? {} : { file });
  const { world } = result;
  if (world.orbitFloor_m >= 10 * world.radius_m) {
    throw badValue('world.orbitFloor_m', world.orbitFloor_m, 'below ten radii of the world', file);
  }
  return result;
}

type OwnAtmosphere = NonNullable<OwnWorldCard['atmosphere']>;

function withoutNulls(atmosphere: OwnAtmosphere) {
  if (atmosphere.model === 'us-standard-1976') return atmosphere;
  const { top_m, heatCapacityRatio, ...rest } = atmosphere;
  return {
    ...rest,
    ...(typeof top_m === 'number' ? { top_m } : {}),
    ...(typeof heatCapacityRatio === 'number' ? { heatCapacityRatio } : {}),
  };
}

function siteOf(site: NonNullable<MissionCard['site']>, assumed: string[]): Mission['site'] {
  const latitude = site.latitude_deg ?? null;
  const azimuth = site.launchAzimuth_deg ?? null;
  if (latitude === null && azimuth === null) {
    assumed.push(
      'The launch site is taken to lie at latitude 0 and the launch to go due east (azimuth 90°): no card gives them.',
    );
  } else if (latitude === null) {
    assumed.push('The launch site is taken to lie at latitude 0: the card gives no site.latitude_deg.');
  } else if (azimuth === null) {
    assumed.push(
      'The launch is taken to go due east (azimuth 90°): the card gives no site.launchAzimuth_deg.',
    );
  }
  return {
    latitude_rad: (latitude ?? 0) * DEGREE,
    longitude_rad: (site.longitude_deg ?? 0) * DEGREE,
    altitude_m: site.altitude_m ?? 0,
    launchAzimuth_rad: (azimuth ?? 90) * DEGREE,
    latitudeKnown: latitude !== null,
    longitudeKnown: typeof site.longitude_deg === 'number',
    azimuthKnown: azimuth !== null,
  };
}

function returnOf(card: ReturnCard): ReturnVehicle {
  return {
    mass_kg: card.mass_kg ?? null,
    referenceArea_m2: card.referenceArea_m2 ?? null,
    dragCoefficient: card.dragCoefficient ?? null,
    noseRadius_m: card.noseRadius_m ?? null,
    parachutes: (card.parachutes ?? []).map((p) => ({
      count: p.count ?? 1,
      dragArea_m2: p.dragArea_m2,
      openAltitude_m: p.openAltitude_m ?? null,
      fullAltitude_m: p.fullAltitude_m ?? null,
    })),
  };
}
