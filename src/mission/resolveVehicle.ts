import { formatFigure } from '../units/figures.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { badValue } from './badValue.ts';
import type { BoosterCard, JettisonCard, StageCard, VehicleCard } from './cardSchema.ts';
import { peakThrust_N, totalImpulse_N_s } from './thrustCurve.ts';
import type { Booster, Jettison, Stage, Vehicle } from './types.ts';

/** Pressure at which a sea-level specific impulse is quoted: the standard atmosphere's, wherever the flight is. */
const SEA_LEVEL_PRESSURE_PA = 101325;

/**
 * The vehicle of the card with what follows from its own values filled in: exit area from a sea-level specific
 * impulse; thrust and specific impulse of a solid motor from its thrust curve.
 * @throws LossbookError card-bad-value where values contradict each other.
 */
export function resolveVehicle(card: VehicleCard, file: string | undefined, assumed: string[]): Vehicle {
  const stages = (card.stages ?? []).map((stage, i) => resolveStage(stage, i, file, assumed));
  const fixed = stages.filter((_, i) => isAbsent(card.stages?.[i]?.throttleMin)).map((stage) => stage.name);
  if (fixed.length > 0) {
    assumed.push(
      `${list(fixed)} ${fixed.length === 1 ? 'is' : 'are'} taken not to throttle when flown anew: throttleMin is not given.`,
    );
  }
  const unpressed = stages.flatMap((stage, i) =>
    stage.boosters
      .filter((_, k) => isAbsent(card.stages?.[i]?.boosters?.[k]?.exitArea_m2))
      .map((b) => b.name),
  );
  if (unpressed.length > 0) {
    assumed.push(`No back pressure is counted for ${list(unpressed)}: exitArea_m2 is not given.`);
  }
  return {
    name: card.name ?? null,
    payload_kg: card.payload_kg ?? null,
    stages,
    jettisons: (card.jettisons ?? []).map((part, i) => resolveJettison(part, i, file)),
    ...statedErrors(card),
  };
}

function statedErrors(card: VehicleCard): Pick<Vehicle, 'standardErrors'> {
  const errors = card.standardErrors_percent;
  if (errors === null || errors === undefined) return {};
  const share = (percent: number | null | undefined): number | null =>
    percent === null || percent === undefined ? null : percent / 100;
  return {
    standardErrors: {
      isp: share(errors.isp),
      exitArea: share(errors.exitArea),
      dragArea: share(errors.dragArea),
    },
  };
}

function isAbsent(value: unknown): value is null | undefined {
  return value === null || value === undefined;
}

function list(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`);
  const last = quoted.at(-1) ?? '';
  return quoted.length < 2 ? last : `${quoted.slice(0, -1).join(', ')} and ${last}`;
}

function resolveStage(card: StageCard, index: number, file: string | undefined, assumed: string[]): Stage {
  const path = `vehicle.stages[${index}]`;
  const name = card.name ?? `stage ${index + 1}`;
  const thrustCurve = card.thrustCurve ?? null;
  let thrust = card.thrustVacuum_N ?? null;
  let isp = card.ispVacuum_s ?? null;
  if (thrustCurve !== null) {
    const impulse = totalImpulse_N_s(thrustCurve);
    if (!(impulse > 0))
      throw badValue(`${path}.thrustCurve`, thrustCurve, 'a curve with thrust above 0', file);
    thrust ??= peakThrust_N(thrustCurve);
    if (isp === null && !isAbsent(card.propellantMass_kg) && card.propellantMass_kg > 0) {
      isp = impulse / (STANDARD_GRAVITY_M_S2 * card.propellantMass_kg);
      assumed.push(
        `The vacuum specific impulse of “${name}” is taken as ${formatFigure(isp)} s: its total impulse over its propellant.`,
      );
    }
  }
  const drag = card.dragCoefficient ?? null;
  return {
    name,
    dryMass_kg: card.dryMass_kg ?? null,
    propellantMass_kg: card.propellantMass_kg ?? null,
    thrustVacuum_N: thrust,
    ispVacuum_s: isp,
    exitArea_m2: exitArea(card, path, name, thrust, isp, file, assumed),
    engines: card.engines ?? 1,
    throttleMin: card.throttleMin ?? 1,
    ignitions: card.ignitions ?? null,
    referenceArea_m2: card.referenceArea_m2 ?? null,
    dragCoefficient: typeof drag === 'number' ? [[0, drag]] : drag,
    thrustCurve,
    boosters: (card.boosters ?? []).map((booster, k) =>
      resolveBooster(booster, k, `${path}.boosters[${k}]`, file),
    ),
  };
}

/** As given; else from the sea-level specific impulse: `Isp_sl/Isp_vac = (Tvac − p₀Ae)/Tvac`. */
function exitArea(
  card: StageCard,
  path: string,
  name: string,
  thrust: number | null,
  isp: number | null,
  file: string | undefined,
  assumed: string[],
): number | null {
  const seaLevel = card.ispSeaLevel_s ?? null;
  if (seaLevel !== null && isp !== null && seaLevel > isp) {
    throw badValue(`${path}.ispSeaLevel_s`, seaLevel, `not above ispVacuum_s = ${isp}`, file);
  }
  if (!isAbsent(card.exitArea_m2)) {
    if (seaLevel !== null) {
      assumed.push(`The exit area of “${name}” is used and its ispSeaLevel_s left aside: both are given.`);
    }
    return card.exitArea_m2;
  }
  if (seaLevel === null || isp === null || thrust === null) return null;
  return (thrust * (1 - seaLevel / isp)) / SEA_LEVEL_PRESSURE_PA;
}

function resolveBooster(card: BoosterCard, index: number, path: string, file: string | undefined): Booster {
  const ignitionTime_s = card.ignitionTime_s ?? 0;
  const separationTime_s = card.separationTime_s ?? null;
  if (separationTime_s !== null && separationTime_s <= ignitionTime_s) {
    throw badValue(
      `${path}.separationTime_s`,
      separationTime_s,
      `after ignition at ${ignitionTime_s} s`,
      file,
    );
  }
  return {
    name: card.name ?? `booster ${index + 1}`,
    count: card.count ?? 1,
    dryMass_kg: card.dryMass_kg,
    propellantMass_kg: card.propellantMass_kg,
    thrustVacuum_N: card.thrustVacuum_N,
    ispVacuum_s: card.ispVacuum_s,
    exitArea_m2: card.exitArea_m2 ?? 0,
    ignitionTime_s,
    separationTime_s,
  };
}

function resolveJettison(card: JettisonCard, index: number, file: string | undefined): Jettison {
  const time_s = card.time_s ?? null;
  const altitude_m = card.altitude_m ?? null;
  if ((time_s === null) === (altitude_m === null)) {
    throw badValue(`vehicle.jettisons[${index}]`, card, 'given exactly one of time_s and altitude_m', file);
  }
  return { name: card.name ?? `part ${index + 1}`, mass_kg: card.mass_kg, time_s, altitude_m };
}
