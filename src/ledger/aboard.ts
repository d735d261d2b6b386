import type { Stage, Vehicle } from '../mission/types.ts';
import { massAbove_kg } from '../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';

/** What the vehicle still is at one moment. */
export interface Aboard {
  /** Index of the lowest stage still attached. */
  readonly stage: number;
  readonly mass_kg: number;
  /** From lift-off. */
  readonly time_s: number;
  /** Names of booster groups and jettisons that are gone. */
  readonly gone: ReadonlySet<string>;
  /** Times at which the log shows a part leave, by name; over the card's. */
  readonly dropTimes_s: ReadonlyMap<string, number>;
}

/** Propellant that feeds one set of engines; drops when empty or at its time. */
interface Tank {
  readonly name: string | null;
  propellant_kg: number;
  readonly dry_kg: number;
  readonly flow_kg_s: number;
  readonly isp_s: number;
  readonly drop_s: number | null;
  readonly isCore: boolean;
}

/**
 * Vacuum delta-v still obtainable from what is aboard, m/s (METHODS §5): every unburnt stage in the card's
 * order, boosters with their core, jettisons at their times. All engines burn at full throttle without pause
 * from `time_s` on. Null where the card lacks a mass or a specific impulse that this needs.
 */
export function obtainableDeltaV_m_s(vehicle: Vehicle, aboard: Aboard): number | null {
  let mass = aboard.mass_kg;
  let time = aboard.time_s;
  let total = 0;
  let jettisons = vehicle.jettisons
    .filter((j) => !aboard.gone.has(j.name))
    .map((j) => ({ mass_kg: j.mass_kg, at: aboard.dropTimes_s.get(j.name) ?? j.time_s }));
  for (let s = aboard.stage; s < vehicle.stages.length; s++) {
    const stage = vehicle.stages[s]!;
    const pending = jettisons.reduce((sum, j) => sum + j.mass_kg, 0);
    const tanks = tanksOf(vehicle, s, aboard, mass, time, pending);
    if (tanks === null) return null;
    while (tanks.length > 0) {
      const flow = tanks.reduce((sum, tank) => sum + tank.flow_kg_s, 0);
      const force = tanks.reduce((sum, tank) => sum + tank.flow_kg_s * tank.isp_s, 0);
      let dt = Math.min(...tanks.map((tank) => tank.propellant_kg / tank.flow_kg_s));
      for (const tank of tanks)
        if (tank.drop_s !== null && tank.drop_s > time) dt = Math.min(dt, tank.drop_s - time);
      for (const j of jettisons) if (j.at !== null && j.at > time) dt = Math.min(dt, j.at - time);
      const after = mass - flow * dt;
      if (!(after > 0)) return null;
      total += ((STANDARD_GRAVITY_M_S2 * force) / flow) * Math.log(mass / after);
      mass = after;
      time += dt;
      for (const j of jettisons) if (j.at !== null && j.at <= time + 1e-9) mass -= j.mass_kg;
      jettisons = jettisons.filter((j) => !(j.at !== null && j.at <= time + 1e-9));
      for (let k = tanks.length - 1; k >= 0; k--) {
        const tank = tanks[k]!;
        tank.propellant_kg -= tank.flow_kg_s * dt;
        const due = tank.drop_s !== null && tank.drop_s <= time + 1e-9;
        if (tank.propellant_kg > 1e-9 * tank.flow_kg_s && !due) continue;
        if (!tank.isCore) mass -= tank.dry_kg + Math.max(0, tank.propellant_kg);
        tanks.splice(k, 1);
      }
    }
    if (s + 1 < vehicle.stages.length) {
      mass -= stage.dryMass_kg ?? 0;
      // A jettison of unknown time is taken to go with the stage that was burning.
      for (const j of jettisons) if (j.at === null) mass -= j.mass_kg;
      jettisons = jettisons.filter((j) => j.at !== null);
    }
  }
  return total;
}

function tanksOf(
  vehicle: Vehicle,
  s: number,
  aboard: Aboard,
  mass_kg: number,
  time_s: number,
  pending_kg: number,
): Tank[] | null {
  const stage = vehicle.stages[s]!;
  const above = massAbove_kg(vehicle, s);
  if (above === null || stage.dryMass_kg === null || stage.ispVacuum_s === null) return null;
  const boosters =
    s === aboard.stage
      ? boosterTanks(stage, aboard, time_s)
      : boosterTanks(stage, { ...aboard, gone: new Set() }, 0);
  const attached = boosters.reduce((sum, b) => sum + b.dry_kg + b.propellant_kg, 0);
  const core =
    s === aboard.stage
      ? Math.max(0, mass_kg - above - stage.dryMass_kg - attached - pending_kg)
      : stage.propellantMass_kg;
  if (core === null) return null;
  // Without a thrust only the order of burning matters, not the time: any flow serves.
  const flow =
    stage.thrustVacuum_N === null ? core : stage.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
  if (stage.thrustVacuum_N === null && boosters.length > 0) return null;
  const tanks: Tank[] =
    core > 0
      ? [
          {
            name: null,
            propellant_kg: core,
            dry_kg: 0,
            flow_kg_s: flow,
            isp_s: stage.ispVacuum_s,
            drop_s: null,
            isCore: true,
          },
        ]
      : [];
  return [...tanks, ...boosters];
}

/** The boosters still attached, with what is left in them when they burnt at their rate since ignition. */
function boosterTanks(stage: Stage, aboard: Aboard, time_s: number): Tank[] {
  return stage.boosters.flatMap((booster) => {
    if (aboard.gone.has(booster.name)) return [];
    const flow = booster.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * booster.ispVacuum_s);
    const burnt = Math.max(0, time_s - booster.ignitionTime_s) * flow;
    const left = Math.max(0, booster.propellantMass_kg - burnt);
    return [
      {
        name: booster.name,
        propellant_kg: left * booster.count,
        dry_kg: booster.dryMass_kg * booster.count,
        flow_kg_s: flow * booster.count,
        isp_s: booster.ispVacuum_s,
        drop_s: aboard.dropTimes_s.get(booster.name) ?? booster.separationTime_s,
        isCore: false,
      },
    ];
  });
}
