import { formatFigure, formatLength_m, formatPressure_Pa } from '../units/figures.ts';
import { gravity_m_s2 } from '../world/gravity.ts';
import type { World } from '../world/types.ts';
import { describeVehicle, missingOfVehicle } from './describeVehicle.ts';
import type { Mission, ReturnVehicle, Target } from './types.ts';

/** A mission in sentences, for `lossbook check`. */
export interface MissionDescription {
  /** What the card says and what follows from it, assumptions included. */
  readonly understood: readonly string[];
  /** What the card leaves out, each with the figures that this costs. */
  readonly missing: readonly string[];
}

const DEGREE = Math.PI / 180;

/** What was understood of a mission card and what is missing in it. */
export function describeMission(mission: Mission): MissionDescription {
  const { vehicle, limits, flight, returnVehicle } = mission;
  const understood = [
    ...(mission.name === null ? [] : [`Mission: ${mission.name}.`]),
    worldSentence(mission.world),
    ...(mission.site.latitudeKnown || mission.site.azimuthKnown ? [siteSentence(mission)] : []),
    targetSentence(mission.target, mission.targetKnown),
    ...(vehicle === null ? [] : describeVehicle(vehicle)),
  ];
  const limitTexts = [
    limits.dynamicPressure_Pa === null
      ? null
      : `dynamic pressure up to ${formatPressure_Pa(limits.dynamicPressure_Pa)}`,
    limits.acceleration_m_s2 === null
      ? null
      : `acceleration up to ${formatFigure(limits.acceleration_m_s2)} m/s²`,
    limits.angleOfAttackInAir_rad === null
      ? null
      : `angle of attack in air up to ${degrees(limits.angleOfAttackInAir_rad)}`,
  ].filter((text) => text !== null);
  if (limitTexts.length > 0) understood.push(`Limits: ${limitTexts.join(', ')}.`);
  const flown = [
    flight.pilot === null ? null : `pilot ${flight.pilot}`,
    flight.attempt === null ? null : `attempt ${flight.attempt}`,
    flight.date,
  ].filter((text) => text !== null);
  if (flown.length > 0) understood.push(`Flight: ${flown.join(', ')}.`);
  if (returnVehicle !== null) understood.push(returnSentence(returnVehicle));
  understood.push(...mission.assumed.map((sentence) => `Assumed: ${sentence}`));
  return { understood, missing: missingOf(mission) };
}

function degrees(angle_rad: number): string {
  return `${formatFigure(angle_rad / DEGREE)}°`;
}

function worldSentence(world: World): string {
  const { atmosphere } = world;
  const g = formatFigure(gravity_m_s2(world, world.radius_m), { decimals: 3 });
  const turn =
    world.spin_rad_s === 0
      ? 'does not turn'
      : `turns once in ${formatFigure((2 * Math.PI) / Math.abs(world.spin_rad_s), { decimals: 0 })} s${world.spin_rad_s < 0 ? ', westward' : ''}`;
  const air =
    atmosphere === null
      ? 'no air'
      : `air to ${formatLength_m(atmosphere.top_m)} (${atmosphere.source === world.source ? atmosphere.model : atmosphere.source})`;
  return `World: ${world.name}, radius ${formatLength_m(world.radius_m)}, gravity ${g} m/s² at its surface, ${turn}, ${air}, orbit floor ${formatLength_m(world.orbitFloor_m)}.`;
}

function siteSentence(mission: Mission): string {
  const { site } = mission;
  return `Site: latitude ${degrees(site.latitude_rad)}, longitude ${degrees(site.longitude_rad)}, altitude ${formatLength_m(site.altitude_m)}, launch azimuth ${degrees(site.launchAzimuth_rad)}.`;
}

function targetSentence(target: Target, known: boolean): string {
  const word = known ? 'Target' : 'Target (assumed)';
  switch (target.kind) {
    case 'orbit': {
      const { apoapsisAltitude_m: high, periapsisAltitude_m: low } = target;
      const shape =
        high === low
          ? `circular orbit at ${formatLength_m(high)}`
          : `orbit of ${formatLength_m(low)} by ${formatLength_m(high)}`;
      const plane = target.inclination_rad === null ? '' : `, inclination ${degrees(target.inclination_rad)}`;
      return `${word}: ${shape} within ${formatLength_m(target.tolerance_m)}${plane}.`;
    }
    case 'suborbital':
      return `${word}: a peak at ${formatLength_m(target.peakAltitude_m)} within ${formatLength_m(target.tolerance_m)}.`;
    case 'escape':
      return `${word}: escape with C3 = ${formatFigure(target.c3_m2_s2)} m²/s².`;
    case 'landing':
      return `${word}: a landing.`;
  }
}

function returnSentence(back: ReturnVehicle): string {
  const chutes = back.parachutes.reduce((sum, p) => sum + p.count, 0);
  const parts = [
    back.mass_kg === null ? null : `${formatFigure(back.mass_kg, { decimals: 0 })} kg`,
    chutes === 0 ? 'no parachute' : `${chutes} parachute${chutes === 1 ? '' : 's'}`,
  ].filter((text) => text !== null);
  return `Return: ${parts.join(', ')}.`;
}

function missingOf(mission: Mission): string[] {
  const missing: string[] = [];
  const { site, world, vehicle, returnVehicle } = mission;
  if (world.spin_rad_s !== 0 && !site.latitudeKnown) {
    missing.push(
      'site.latitude_deg: inertial speed, orbit and delta-v to go lean on latitude 0, unless the log gives latitude or inertial speed.',
    );
  }
  if (world.spin_rad_s !== 0 && !site.azimuthKnown) {
    missing.push(
      'site.launchAzimuth_deg: inertial speed and inclination lean on a launch due east, unless the log gives a course or positions.',
    );
  }
  if (!mission.targetKnown) {
    missing.push('target: delta-v to go, margin and verdict are for the lowest circular orbit.');
  }
  if (vehicle === null) {
    missing.push(
      'vehicle: no margin and no re-flight; back pressure and drag only as far as the log shows them.',
    );
  } else {
    missing.push(...missingOfVehicle(vehicle, world.atmosphere !== null));
  }
  if (returnVehicle !== null) {
    if (returnVehicle.mass_kg === null) missing.push('return.mass_kg: no terminal speed under parachutes.');
    if (returnVehicle.referenceArea_m2 === null || returnVehicle.dragCoefficient === null) {
      missing.push(
        'return.referenceArea_m2 and return.dragCoefficient: no terminal speed without parachutes.',
      );
    }
    if (returnVehicle.noseRadius_m === null && world.atmosphere !== null) {
      missing.push('return.noseRadius_m: heating only in relation to its own peak.');
    }
  }
  return missing;
}
