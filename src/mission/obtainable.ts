import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { meanThrust_N } from './thrustCurve.ts';
import type { Booster, Stage, Vehicle } from './types.ts';
import { massAbove_kg } from './vehicle.ts';

/** What the vehicle still is at one moment. */
export interface Aboard {
  /** Index of the lowest stage still attached. */
  readonly stage: number;
  readonly mass_kg: number;
  /** From lift-off. */
  readonly time_s: number;
  /** Names of booster groups and jettisons that are gone. */
  readonly gone: ReadonlySet<string>;
  /** Times at which a part is known to leave, by name; over the card's. */
  readonly dropTimes_s: ReadonlyMap<string, number>;
}

/** Engines that draw on one tank, and what is in it. */
interface Motor {
  readonly flow_kg_s: number;
  readonly isp_s: number;
  propellant_kg: number;
  readonly from_s: number;
  /** When it drops even if not empty. */
  readonly until_s: number;
  /** Mass that leaves with it, besides propellant; 0 for the core, which leaves at the end of its stage. */
  readonly dry_kg: number;
}

interface Pending {
  readonly mass_kg: number;
  readonly at_s: number | null;
}

/**
 * Vacuum delta-v obtainable from what is aboard, m/s (METHODS §5; Tsiolkovsky 1903 stretch by stretch): every
 * unburnt stage in the card's order, boosters beside their core, jettisons at their times; from `time_s` on all
 * engines burn at full thrust without pause. A jettison of unknown time leaves with the stage that burns now.
 * Null where the card lacks a mass or a specific impulse, or a thrust on which the moment of a drop depends.
 */
export function obtainableDeltaV_m_s(vehicle: Vehicle, aboard: Aboard): number | null {
  let mass = aboard.mass_kg;
  let time = aboard.time_s;
  let total = 0;
  let pending: Pending[] = vehicle.jettisons
    .filter((j) => !aboard.gone.has(j.name))
    .map((j) => ({ mass_kg: j.mass_kg, at_s: aboard.dropTimes_s.get(j.name) ?? j.time_s }));
  const timed = pending.some((j) => j.at_s !== null);
  for (let s = aboard.stage; s < vehicle.stages.length; s++) {
    const stage = vehicle.stages[s]!;
    const motors = motorsOf(vehicle, s, aboard, mass, time, timed, pending);
    if (motors === null) return null;
    // What is due by now leaves at once, not at the next change of the engines.
    mass -= dropDue(pending, time);
    pending = pending.filter((j) => !isDue(j, time));
    mass -= dropSpent(motors, time);
    while (motors.length > 0) {
      const lit = motors.filter((m) => m.from_s <= time && m.propellant_kg > 0);
      const flow = lit.reduce((sum, m) => sum + m.flow_kg_s, 0);
      const force = lit.reduce((sum, m) => sum + m.flow_kg_s * m.isp_s, 0) * STANDARD_GRAVITY_M_S2;
      const moments = [
        ...lit.map((m) => time + m.propellant_kg / m.flow_kg_s),
        ...motors.flatMap((m) => [m.from_s, m.until_s]),
        ...pending.map((j) => j.at_s ?? Number.POSITIVE_INFINITY),
      ].filter((moment) => moment > time);
      const next = Math.min(...moments);
      if (!Number.isFinite(next)) break;
      const after = mass - flow * (next - time);
      if (!(after > 0)) return null;
      if (flow > 0) total += (force / flow) * Math.log(mass / after);
      for (const m of lit) {
        const left = m.propellant_kg - m.flow_kg_s * (next - time);
        m.propellant_kg = left > 1e-9 * m.flow_kg_s ? left : 0;
      }
      mass = after;
      time = next;
      mass -= dropDue(pending, time);
      pending = pending.filter((j) => !isDue(j, time));
      mass -= dropSpent(motors, time);
    }
    mass -= stage.dryMass_kg ?? 0;
    for (const j of pending) if (j.at_s === null) mass -= j.mass_kg;
    pending = pending.filter((j) => j.at_s !== null);
  }
  return total;
}

function isDue(part: Pending, time_s: number): boolean {
  return part.at_s !== null && part.at_s <= time_s;
}

/** Mass of the parts that are due to leave by a time, kg. */
function dropDue(pending: readonly Pending[], time_s: number): number {
  return pending.filter((j) => isDue(j, time_s)).reduce((sum, j) => sum + j.mass_kg, 0);
}

/** Takes out the motors that are empty or due to leave; returns the mass that leaves with them, kg. */
function dropSpent(motors: Motor[], time_s: number): number {
  let dropped = 0;
  for (let k = motors.length - 1; k >= 0; k--) {
    const motor = motors[k]!;
    if (motor.propellant_kg > 0 && time_s < motor.until_s) continue;
    dropped += motor.dry_kg + motor.propellant_kg;
    motors.splice(k, 1);
  }
  return dropped;
}

/** The core and the boosters of stage `s`, lit from `time_s`; null where something needed is not known. */
function motorsOf(
  vehicle: Vehicle,
  s: number,
  aboard: Aboard,
  mass_kg: number,
  time_s: number,
  timesMatter: boolean,
  pending: readonly Pending[],
): Motor[] | null {
  const stage = vehicle.stages[s]!;
  const now = s === aboard.stage;
  const boosters = stage.boosters
    .filter((b) => !now || !aboard.gone.has(b.name))
    .map((b) => boosterMotor(b, aboard, now, time_s));
  const propellant = now ? leftInCore(vehicle, s, mass_kg, boosters, pending) : stage.propellantMass_kg;
  if (propellant === null || stage.ispVacuum_s === null) return null;
  const thrust = fullThrust_N(stage);
  if (thrust === null && (timesMatter || boosters.length > 0)) return null;
  // Without a thrust only the order of burning matters, and any flow serves.
  const flow =
    thrust === null ? Math.max(propellant, 1) : thrust / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
  const core: Motor = {
    flow_kg_s: flow,
    isp_s: stage.ispVacuum_s,
    propellant_kg: propellant,
    from_s: time_s,
    until_s: Number.POSITIVE_INFINITY,
    dry_kg: 0,
  };
  return [core, ...boosters];
}

function fullThrust_N(stage: Stage): number | null {
  return stage.thrustCurve === null ? stage.thrustVacuum_N : meanThrust_N(stage.thrustCurve);
}

/** What the mass says is left in the burning stage's own tanks, kg. */
function leftInCore(
  vehicle: Vehicle,
  s: number,
  mass_kg: number,
  boosters: readonly Motor[],
  pending: readonly Pending[],
): number | null {
  const above = massAbove_kg(vehicle, s);
  const dry = vehicle.stages[s]!.dryMass_kg;
  if (above === null || dry === null) return null;
  const attached = boosters.reduce((sum, b) => sum + b.dry_kg + b.propellant_kg, 0);
  const parts = pending.reduce((sum, j) => sum + j.mass_kg, 0);
  return Math.max(0, mass_kg - above - dry - attached - parts);
}

/** A group of boosters with what is left in it when it burnt at its rate since its ignition. */
function boosterMotor(booster: Booster, aboard: Aboard, now: boolean, time_s: number): Motor {
  const each = booster.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * booster.ispVacuum_s);
  const burnt = now ? Math.max(0, time_s - booster.ignitionTime_s) * each : 0;
  return {
    flow_kg_s: booster.count * each,
    isp_s: booster.ispVacuum_s,
    propellant_kg: booster.count * Math.max(0, booster.propellantMass_kg - burnt),
    from_s: Math.max(booster.ignitionTime_s, time_s),
    until_s: aboard.dropTimes_s.get(booster.name) ?? booster.separationTime_s ?? Number.POSITIVE_INFINITY,
    dry_kg: booster.count * booster.dryMass_kg,
  };
}
