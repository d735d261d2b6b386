import type { Mission, Stage, Vehicle } from '../../mission/types.ts';
import { liftOffMass_kg } from '../../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import type { World } from '../../world/types.ts';
import { airAlongPath } from '../air.ts';

/** A stage with less than this share of its propellant left is taken to be spent when the engines start again. */
const SPENT_SHARE = 0.03;

/** Propellant flow of a stage at a row of the log, kg/s; 0 = no engine runs. */
type Flow = (row: number, stage: Stage) => number;

/**
 * Flow that the throttle tells: throttle × Tvac/(g0·Isp); null where the card lacks a stage's thrust or specific
 * impulse. Throttle as a fraction of full.
 */
function flowByThrottle(throttle: Float64Array, { stages }: Vehicle): Flow | null {
  if (stages.some((s) => s.thrustVacuum_N === null || s.ispVacuum_s === null)) return null;
  return (row, stage) =>
    Math.max(0, throttle[row]!) * (stage.thrustVacuum_N! / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s!));
}

/**
 * Flow that the logged thrust tells: (T + p·Ae)/(g0·Isp); null where the card lacks a stage's specific impulse, or its
 * exit area on a world with air. Thrust at ambient pressure, N; pressure, Pa, on the log's rows.
 */
function flowByThrust(thrust: Float64Array, pressure: Float64Array, { stages }: Vehicle): Flow | null {
  const airless = pressure.every((p) => p === 0);
  if (stages.some((s) => s.ispVacuum_s === null || (s.exitArea_m2 === null && !airless))) return null;
  return (row, stage) =>
    thrust[row]! > 0
      ? (thrust[row]! + pressure[row]! * (stage.exitArea_m2 ?? 0)) /
        (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s!)
      : 0;
}

/**
 * Mass on the log's rows from the card and what the log shows of the flow, the throttle before the thrust: the lift-off
 * mass less what flows, a spent stage thrown off in the middle of the pause before the next one burns, parts at their
 * times or altitudes. Null where the card lacks a mass or what the flow needs, or has boosters or thrust curves, whose
 * flow no control tells. Times from lift-off, of a log that begins before it.
 */
export function massFromCard(
  t: Float64Array,
  altitude: Float64Array,
  { throttle, thrust }: { readonly throttle: Float64Array | null; readonly thrust: Float64Array | null },
  { world, vehicle }: Mission,
): Float64Array | null {
  if (vehicle === null) return null;
  const flow =
    throttle !== null
      ? flowByThrottle(throttle, vehicle)
      : thrust !== null
        ? flowByThrust(thrust, pressureAt(world, altitude), vehicle)
        : null;
  return flow === null ? null : massByFlow(t, altitude, flow, vehicle);
}

function massByFlow(
  t: Float64Array,
  altitude: Float64Array,
  flow: Flow,
  vehicle: Vehicle,
): Float64Array | null {
  const start = liftOffMass_kg(vehicle);
  const { stages } = vehicle;
  if (start === null || stages.length === 0) return null;
  if (stages.some((s) => s.dryMass_kg === null || s.propellantMass_kg === null)) return null;
  if (stages.some((s) => s.boosters.length > 0 || s.thrustCurve !== null)) return null;
  const mass = new Float64Array(t.length);
  const gone = new Set<number>();
  let now = start;
  let stage = 0;
  let left = stages[0]!.propellantMass_kg!;
  let pause = -1;
  mass[0] = start;
  for (let i = 1; i < t.length; i++) {
    const lit = flow(i, stages[stage]!) > 0;
    const wasLit = flow(i - 1, stages[stage]!) > 0;
    if (lit && !wasLit && pause >= 0) stageIfSpent(pause, i);
    const mean = (flow(i - 1, stages[stage]!) + flow(i, stages[stage]!)) / 2;
    const burnt = Math.min(left, mean * (t[i]! - t[i - 1]!));
    left -= burnt;
    now -= burnt;
    vehicle.jettisons.forEach((part, k) => {
      const due = part.time_s !== null ? t[i]! >= part.time_s : altitude[i]! >= (part.altitude_m ?? 1e99);
      if (!due || gone.has(k)) return;
      gone.add(k);
      now -= part.mass_kg;
    });
    mass[i] = now;
    if (!lit && wasLit) pause = i;
  }
  return mass;

  /** Throws the spent stage off in the middle of the pause from row `from` to the ignition before row `to`. */
  function stageIfSpent(from: number, to: number): void {
    const spent = stages[stage]!;
    if (left > SPENT_SHARE * spent.propellantMass_kg! || stage + 1 >= stages.length) return;
    const off = spent.dryMass_kg! + left;
    const middle = (from + to) >> 1;
    for (let k = middle; k < to; k++) mass[k]! -= off;
    now -= off;
    stage++;
    left = stages[stage]!.propellantMass_kg!;
  }
}

function pressureAt(world: World, altitude: Float64Array): Float64Array {
  return airAlongPath(world, altitude, new Float64Array(altitude.length)).pressure;
}
