import type { Booster, Stage, Vehicle } from './types.ts';

/**
 * Drag coefficient × reference area of the stack while `stage` burns, m², at a Mach number: straight between
 * the card's nodes, constant beyond them. Null where the card gives no area or no coefficient.
 */
export function dragArea_m2(stage: Stage, mach: number): number | null {
  const { referenceArea_m2, dragCoefficient: nodes } = stage;
  if (referenceArea_m2 === null || nodes === null || nodes.length === 0) return null;
  let i = 0;
  while (i < nodes.length && nodes[i]![0] <= mach) i++;
  const after = nodes[i];
  const before = nodes[i - 1];
  if (before === undefined) return referenceArea_m2 * nodes[0]![1];
  if (after === undefined) return referenceArea_m2 * before[1];
  const part = (mach - before[0]) / (after[0] - before[0]);
  return referenceArea_m2 * (before[1] + part * (after[1] - before[1]));
}

/** Dry mass and propellant of a stage's boosters, all of them, kg. */
export function boostersMass_kg(boosters: readonly Booster[]): number {
  return boosters.reduce((sum, b) => sum + b.count * (b.dryMass_kg + b.propellantMass_kg), 0);
}

/** Dry mass, propellant and boosters of a full stage, kg; null where the card lacks one. */
export function stageMass_kg(stage: Stage): number | null {
  if (stage.dryMass_kg === null || stage.propellantMass_kg === null) return null;
  return stage.dryMass_kg + stage.propellantMass_kg + boostersMass_kg(stage.boosters);
}

/**
 * What stage `stageIndex` (0-based) carries, kg: payload and the full later stages. Jettisoned parts are extra
 * to it, since they leave at times of their own. Null where the card lacks a mass.
 */
export function massAbove_kg(vehicle: Vehicle, stageIndex: number): number | null {
  let sum = vehicle.payload_kg;
  for (const stage of vehicle.stages.slice(stageIndex + 1)) {
    const mass = stageMass_kg(stage);
    if (sum === null || mass === null) return null;
    sum += mass;
  }
  return sum;
}

/** Payload, stages, boosters and parts to be jettisoned, kg; null where the card lacks a mass. */
export function liftOffMass_kg(vehicle: Vehicle): number | null {
  const above = massAbove_kg(vehicle, -1);
  return above === null ? null : above + jettisonsMass_kg(vehicle);
}

function jettisonsMass_kg(vehicle: Vehicle): number {
  return vehicle.jettisons.reduce((sum, j) => sum + j.mass_kg, 0);
}
