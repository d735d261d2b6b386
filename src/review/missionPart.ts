import type { Flight } from '../flight/types.ts';
import { radiusAt_m } from '../world/radius.ts';
import { targetLine } from './missionLine.ts';
import type { Review } from './types.ts';

const DEG = 180 / Math.PI;

/** What the review says of the mission: the card's words, and the constants that its figures rest on. */
export function missionPart({ mission, log }: Flight): Review['mission'] {
  const { world, site, target, vehicle, flight } = mission;
  const { latitude, longitude } = log.channels;
  return {
    name: mission.name,
    world: world.name,
    worldSource: world.source,
    orbitFloor_m: world.orbitFloor_m,
    constants: {
      gravitationalParameter_m3_s2: world.mu_m3_s2,
      radius_m: world.radius_m,
      radiusAtSite_m: radiusAt_m(world, 0, site.latitude_rad),
      spin_rad_s: world.spin_rad_s,
      airTop_m: world.atmosphere?.top_m ?? null,
    },
    site: {
      latitude_deg: site.latitudeKnown ? site.latitude_rad * DEG : firstDegrees(latitude),
      longitude_deg: site.longitudeKnown ? site.longitude_rad * DEG : firstDegrees(longitude),
      launchAzimuth_deg: site.azimuthKnown ? site.launchAzimuth_rad * DEG : null,
    },
    target: targetLine(mission),
    targetOrbit:
      target.kind === 'orbit'
        ? { apoapsisAltitude_m: target.apoapsisAltitude_m, periapsisAltitude_m: target.periapsisAltitude_m }
        : null,
    vehicle: vehicle?.name ?? null,
    payload_kg: vehicle?.payload_kg ?? null,
    pilot: flight.pilot,
    attempt: flight.attempt,
    date: flight.date,
    notes: flight.notes,
    assumed: mission.assumed,
  };
}

/** First logged angle in degrees; null where there is none. */
function firstDegrees(angle: Float64Array | undefined): number | null {
  const first = angle?.find((x) => Number.isFinite(x));
  return first === undefined ? null : first * DEG;
}
