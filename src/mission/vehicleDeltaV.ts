import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { meanThrust_N } from './thrustCurve.ts';
import type { Stage, Vehicle } from './types.ts';
import { liftOffMass_kg } from './vehicle.ts';

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

/**
 * The whole vehicle's vacuum delta-v, m/s (Tsiolkovsky 1903, stage by stage): everything burns at full thrust
 * without pause from lift-off, boosters beside their core from their ignition, each part leaving when empty or
 * at its time. A jettison with an altitude for its moment is counted as leaving with the first stage. Null
 * where the card lacks a mass or a specific impulse, or a thrust on which the moment of a drop depends.
 */
export function vehicleDeltaV_m_s(vehicle: Vehicle): number | null {
  let mass = liftOffMass_kg(vehicle);
  if (mass === null || vehicle.stages.length === 0) return null;
  let total = 0;
  let time = 0;
  let pending = [...vehicle.jettisons];
  const timed = pending.some((j) => j.time_s !== null);
  for (const [index, stage] of vehicle.stages.entries()) {
    const motors = motorsOf(stage, timed, time);
    if (motors === null) return null;
    mass -= dropSpent(motors, time);
    while (motors.length > 0) {
      const lit = motors.filter((m) => m.from_s <= time && m.propellant_kg > 0);
      const flow = lit.reduce((sum, m) => sum + m.flow_kg_s, 0);
      const force = lit.reduce((sum, m) => sum + m.flow_kg_s * m.isp_s, 0) * STANDARD_GRAVITY_M_S2;
      const moments = [
        ...lit.map((m) => time + m.propellant_kg / m.flow_kg_s),
        ...motors.flatMap((m) => [m.from_s, m.until_s]),
        ...pending.map((j) => j.time_s ?? Number.POSITIVE_INFINITY),
      ].filter((moment) => moment > time);
      const next: number = Math.min(...moments);
      if (!Number.isFinite(next)) break;
      const after: number = mass - flow * (next - time);
      if (flow > 0) total += (force / flow) * Math.log(mass / after);
      for (const m of lit) {
        const left = m.propellant_kg - m.flow_kg_s * (next - time);
        m.propellant_kg = left > 1e-9 * m.flow_kg_s ? left : 0;
      }
      mass = after;
      time = next;
      for (const j of pending) if (j.time_s !== null && j.time_s <= time) mass -= j.mass_kg;
      pending = pending.filter((j) => j.time_s === null || j.time_s > time);
      mass -= dropSpent(motors, time);
    }
    mass -= stage.dryMass_kg ?? 0;
    if (index > 0) continue;
    for (const j of pending) if (j.altitude_m !== null) mass -= j.mass_kg;
    pending = pending.filter((j) => j.altitude_m === null);
  }
  return total;
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

/** The core and the boosters of a stage that is lit at `start_s`; null where a flow is needed and not known. */
function motorsOf(stage: Stage, timesMatter: boolean, start_s: number): Motor[] | null {
  const { propellantMass_kg, ispVacuum_s } = stage;
  if (propellantMass_kg === null || ispVacuum_s === null) return null;
  const thrust = stage.thrustCurve === null ? stage.thrustVacuum_N : meanThrust_N(stage.thrustCurve);
  if (thrust === null && (timesMatter || stage.boosters.length > 0)) return null;
  // Without a thrust only the order of burning matters, and any flow serves.
  const flow = thrust === null ? propellantMass_kg : thrust / (STANDARD_GRAVITY_M_S2 * ispVacuum_s);
  const core: Motor = {
    flow_kg_s: flow,
    isp_s: ispVacuum_s,
    propellant_kg: propellantMass_kg,
    from_s: start_s,
    until_s: Number.POSITIVE_INFINITY,
    dry_kg: 0,
  };
  const boosters = stage.boosters.map((b): Motor => {
    const each = b.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * b.ispVacuum_s);
    return {
      flow_kg_s: b.count * each,
      isp_s: b.ispVacuum_s,
      propellant_kg: b.count * b.propellantMass_kg,
      from_s: Math.max(b.ignitionTime_s, start_s),
      until_s: b.separationTime_s ?? Number.POSITIVE_INFINITY,
      dry_kg: b.count * b.dryMass_kg,
    };
  });
  return [core, ...boosters];
}
