import { formatFigure } from '../units/figures.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { Stage, Vehicle } from './types.ts';
import { boostersMass_kg, liftOffMass_kg } from './vehicle.ts';
import { vehicleDeltaV_m_s } from './vehicleDeltaV.ts';

const kg = (mass: number) => `${formatFigure(mass, { decimals: mass < 100 ? 1 : 0 })} kg`;

/** The vehicle in sentences: the whole, each stage, the parts thrown off. */
export function describeVehicle(vehicle: Vehicle): string[] {
  const mass = liftOffMass_kg(vehicle);
  const deltaV = vehicleDeltaV_m_s(vehicle);
  const count = vehicle.stages.length;
  const whole = [
    `Vehicle: ${vehicle.name ?? 'unnamed'}`,
    `${count} stage${count === 1 ? '' : 's'}`,
    vehicle.payload_kg === null ? null : `payload ${kg(vehicle.payload_kg)}`,
    mass === null ? null : `${kg(mass)} at lift-off`,
    deltaV === null ? null : `${formatFigure(deltaV, { decimals: 0 })} m/s in vacuum`,
    liftOffThrustToWeight(vehicle.stages[0], mass),
  ].filter((text) => text !== null);
  return [
    `${whole.join(', ')}.`,
    ...vehicle.stages.map(stageSentence),
    ...vehicle.jettisons.map((j) => {
      const when =
        j.time_s === null
          ? `at ${formatFigure((j.altitude_m ?? 0) / 1000)} km`
          : `at ${formatFigure(j.time_s)} s`;
      return `Jettison “${j.name}”: ${kg(j.mass_kg)} ${when}.`;
    }),
  ];
}

/** Vacuum thrust of what is lit at lift-off over weight at standard gravity. */
function liftOffThrustToWeight(stage: Stage | undefined, mass_kg: number | null): string | null {
  if (stage === undefined || mass_kg === null || stage.thrustVacuum_N === null) return null;
  const beside = stage.boosters.filter((b) => b.ignitionTime_s === 0);
  const thrust = stage.thrustVacuum_N + beside.reduce((sum, b) => sum + b.count * b.thrustVacuum_N, 0);
  return `${formatFigure(thrust / (mass_kg * STANDARD_GRAVITY_M_S2), { decimals: 2 })} vacuum thrust to weight at standard gravity`;
}

function stageSentence(stage: Stage, index: number): string {
  const parts = [
    stage.propellantMass_kg === null ? null : `${kg(stage.propellantMass_kg)} of propellant`,
    stage.dryMass_kg === null ? null : `${kg(stage.dryMass_kg)} dry`,
    stage.thrustVacuum_N === null ? null : `${formatFigure(stage.thrustVacuum_N / 1000)} kN in vacuum`,
    stage.ispVacuum_s === null ? null : `specific impulse ${formatFigure(stage.ispVacuum_s)} s`,
    stage.exitArea_m2 === null ? null : `exit area ${formatFigure(stage.exitArea_m2, { digits: 3 })} m²`,
    stage.boosters.length === 0
      ? null
      : `${stage.boosters.reduce((sum, b) => sum + b.count, 0)} boosters of ${kg(boostersMass_kg(stage.boosters))} in all`,
  ].filter((text) => text !== null);
  return `Stage ${index + 1} “${stage.name}”: ${parts.length > 0 ? parts.join(', ') : 'nothing but its name'}.`;
}

/** What the vehicle lacks, each with the figures that this costs. `inAir`: the world has an atmosphere. */
export function missingOfVehicle(vehicle: Vehicle, inAir: boolean): string[] {
  const missing: string[] = [];
  if (vehicle.payload_kg === null) {
    missing.push('vehicle.payload_kg: no vehicle delta-v, and no margin for stages not yet burning.');
  }
  if (vehicle.stages.length === 0) missing.push('vehicle.stages: no margin, no re-flight.');
  for (const [i, stage] of vehicle.stages.entries()) {
    const path = `vehicle.stages[${i}]`;
    const say = (absent: boolean, field: string, costs: string) => {
      if (absent) missing.push(`${path}.${field} (“${stage.name}”): ${costs}`);
    };
    say(stage.dryMass_kg === null, 'dryMass_kg', 'no vehicle delta-v and no margin.');
    say(stage.propellantMass_kg === null, 'propellantMass_kg', 'no margin until the stage burns.');
    say(
      stage.ispVacuum_s === null,
      'ispVacuum_s',
      'ideal delta-v and margin only if the log lets it be identified.',
    );
    say(
      stage.thrustVacuum_N === null,
      'thrustVacuum_N',
      'no re-flight with a changed throttle; thrust from the logged mass flow.',
    );
    if (!inAir) continue;
    say(
      stage.exitArea_m2 === null,
      'exitArea_m2',
      'back pressure only if the log lets it be identified (ispSeaLevel_s would do).',
    );
    say(
      stage.referenceArea_m2 === null || stage.dragCoefficient === null,
      stage.referenceArea_m2 === null ? 'referenceArea_m2' : 'dragCoefficient',
      'drag only if the log shows it or lets it be identified.',
    );
  }
  return missing;
}
