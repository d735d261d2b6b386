import type { Stage, Vehicle } from '../mission/types.ts';
import { dragArea_m2 } from '../mission/vehicle.ts';
import type { Rocket, RocketStage } from './rocket.ts';

/** A rocket from a card, or what the card lacks for flying it. */
export interface RocketOfCard {
  /** Null where something is missing. */
  readonly rocket: Rocket | null;
  /** Fields of the card that it takes and that are not there. */
  readonly missing: readonly string[];
  /** One sentence for each thing taken as nothing because the card does not say. */
  readonly assumed: readonly string[];
}

/**
 * Makes a card's vehicle flyable. Masses, thrust and specific impulse must be there; an exit area or a drag
 * that is not is taken as zero and said.
 */
export function rocketOf(vehicle: Vehicle): RocketOfCard {
  const missing: string[] = [];
  const assumed: string[] = [];
  const need = (value: number | null, field: string): number => {
    if (value === null) missing.push(field);
    return value ?? Number.NaN;
  };
  const payload_kg = need(vehicle.payload_kg, 'vehicle.payload_kg');
  if (vehicle.stages.length === 0) missing.push('vehicle.stages');
  const stages = vehicle.stages.map((stage, i): RocketStage => {
    const at = `vehicle.stages[${i}]`;
    if (stage.exitArea_m2 === null)
      assumed.push(`Stage ${stage.name} is flown without loss of thrust to air pressure.`);
    if (dragArea_m2(stage, 0) === null) assumed.push(`Stage ${stage.name} is flown without drag.`);
    const curve = stage.thrustCurve;
    return {
      name: stage.name,
      dryMass_kg: need(stage.dryMass_kg, `${at}.dryMass_kg`),
      propellantMass_kg: need(stage.propellantMass_kg, `${at}.propellantMass_kg`),
      thrustVacuum_N: curve === null ? need(stage.thrustVacuum_N, `${at}.thrustVacuum_N`) : 0,
      ispVacuum_s: need(stage.ispVacuum_s, `${at}.ispVacuum_s`),
      exitArea_m2: stage.exitArea_m2 ?? 0,
      dragArea: dragOf(stage),
      thrustCurve: curve,
      boosters: stage.boosters.map(({ count, ...each }) => ({
        ...each,
        dryMass_kg: count * each.dryMass_kg,
        propellantMass_kg: count * each.propellantMass_kg,
        thrustVacuum_N: count * each.thrustVacuum_N,
        exitArea_m2: count * each.exitArea_m2,
      })),
    };
  });
  if (missing.length > 0) return { rocket: null, missing, assumed };
  return { rocket: { payload_kg, stages, jettisons: vehicle.jettisons }, missing, assumed };
}

function dragOf(stage: Stage): (mach: number) => number {
  return dragArea_m2(stage, 0) === null ? () => 0 : (mach) => dragArea_m2(stage, mach) ?? 0;
}
