import type { Flight } from '../flight/types.ts';
import { obtainableDeltaV_m_s } from '../mission/obtainable.ts';
import type { Mission, Target } from '../mission/types.ts';
import { coasted } from '../orbit/coasted.ts';
import { deltaVToGo, type PlanarState, type ToGoTarget } from '../orbit/toGo.ts';
import type { PlanarStates, ToGoAlong } from '../orbit/toGoAlong.ts';
import { type ToGoCurve, toGoCurve } from '../orbit/toGoCurve.ts';
import type { AscentSpan } from './ascentEnd.ts';

/**
 * Delta-v spent, to go and obtainable through the flight (METHODS §5), on one adaptive grid. Curves that cannot
 * be had are null. m/s; times from lift-off.
 */
export interface Budget {
  readonly time_s: readonly number[];
  /** Axis index at or just before each grid time. */
  readonly index: readonly number[];
  readonly spent: readonly number[] | null;
  readonly toGo: readonly number[] | null;
  readonly obtainable: readonly number[] | null;
  readonly margin: readonly number[] | null;
  /** Grid position of the ascent's end. */
  readonly atEnd: number;
  /** Vacuum delta-v of the whole vehicle as it stood at the start. */
  readonly vehicleDeltaV: number | null;
  /** Last time the margin fell through zero for good. */
  readonly lostAt_s: number | null;
  /** The ways to the target from lift-off on (its sample 0), for whoever asks further; null without a target. */
  readonly ways: ToGoAlong | null;
}

/** The target in radii, as the orbit room wants it; null for a target that has no delta-v to go (landing). */
export function toGoTarget(target: Target, radius_m: number): ToGoTarget | null {
  if (target.kind === 'orbit') {
    return {
      kind: 'orbit',
      apoapsisRadius_m: radius_m + target.apoapsisAltitude_m,
      periapsisRadius_m: radius_m + target.periapsisAltitude_m,
    };
  }
  if (target.kind === 'suborbital')
    return { kind: 'suborbital', peakRadius_m: radius_m + target.peakAltitude_m };
  if (target.kind === 'escape') return { kind: 'escape', c3_m2_s2: target.c3_m2_s2 };
  return null;
}

/** `spentCurve` is the ledger's running ideal delta-v on the flight's axis, null where there is none. */
export function budgetAlong(flight: Flight, span: AscentSpan, spentCurve: Float64Array | null): Budget {
  const { time, mission } = flight;
  const first = flight.liftOffIndex;
  const last = Math.max(span.end, Math.min(span.comingDown, nextWork(flight, span), time.length - 1));
  const problem = {
    mu_m3_s2: mission.world.mu_m3_s2,
    floorRadius_m: mission.world.radius_m + mission.world.orbitFloor_m,
    target: toGoTarget(mission.target, mission.world.radius_m),
  };
  const breaks = breakTimes(flight, first, last, span);
  let curve: ToGoCurve | null = null;
  if (problem.target !== null) {
    curve = toGoCurve({ ...problem, target: problem.target }, statesBetween(flight, first, last), breaks);
  }
  const grid = curve === null ? breaks : Array.from(curve.time_s);
  const index =
    curve === null ? breaks.map((t) => time.indexOf(t)) : Array.from(curve.index, (i) => i + first);
  const spent =
    spentCurve === null
      ? null
      : index.map((i) => (i > span.end ? spentCurve[span.end]! : (spentCurve[i] ?? 0)));
  const obtainable = obtainableAlong(flight, index);
  const toGo = curve === null ? null : Array.from(curve.toGo_m_s);
  const margin = toGo !== null && obtainable !== null ? toGo.map((c, k) => obtainable[k]! - c) : null;
  const atEnd = index.indexOf(span.end);
  return {
    time_s: grid,
    index,
    spent,
    toGo,
    obtainable,
    margin,
    atEnd: atEnd === -1 ? grid.length - 1 : atEnd,
    vehicleDeltaV: wholeVehicle(flight),
    lostAt_s: margin === null ? null : lastFallThroughZero(grid, margin),
    ways: curve?.along ?? null,
  };
}

/** The inertial states of a stretch of the axis, both ends in it. */
export function statesBetween(flight: Flight, first: number, last: number): PlanarStates {
  return {
    time_s: flight.time.subarray(first, last + 1),
    radius_m: flight.radius.subarray(first, last + 1),
    radialSpeed_m_s: flight.verticalSpeed.subarray(first, last + 1),
    tangentialSpeed_m_s: flight.track.inertialHorizontalSpeed.subarray(first, last + 1),
  };
}

/**
 * Delta-v to go from the inertial state at one axis point, m/s; null for a target that has none. `across_m_s`
 * puts another horizontal inertial speed in place of the flight's own.
 */
export function toGoAt(flight: Flight, i: number, across_m_s?: number): number | null {
  return toGoFrom(flight.mission, stateAt(flight, i, across_m_s));
}

/** Delta-v to go at axis point `i` as the state at a later one of the same coast, led back along its arc, tells it. */
export function toGoByLater(flight: Flight, i: number, later: number): number | null {
  const back_s = flight.time[i]! - flight.time[later]!;
  return toGoFrom(flight.mission, coasted(flight.mission.world.mu_m3_s2, stateAt(flight, later), back_s));
}

function stateAt(flight: Flight, i: number, across_m_s?: number): PlanarState {
  return {
    radius_m: flight.radius[i]!,
    radialSpeed_m_s: flight.verticalSpeed[i]!,
    tangentialSpeed_m_s: across_m_s ?? flight.track.inertialHorizontalSpeed[i]!,
  };
}

function toGoFrom({ world, target }: Mission, state: PlanarState): number | null {
  const goal = toGoTarget(target, world.radius_m);
  if (goal === null) return null;
  const problem = {
    mu_m3_s2: world.mu_m3_s2,
    floorRadius_m: world.radius_m + world.orbitFloor_m,
    target: goal,
  };
  return deltaVToGo(problem, state).deltaV_m_s;
}

/**
 * Where, after the ascent, the vehicle is put to other use: the next burn, or the separation of what it carried.
 * From there on the target of the ascent is no longer what is flown to.
 */
function nextWork(flight: Flight, span: AscentSpan): number {
  if (!span.isCutoff) return flight.time.length - 1;
  const burn = flight.burns.find((b) => b.startIndex > span.end)?.startIndex;
  const drop = flight.drops.find((d) => d.kind === 'separation' && d.index > span.end)?.index;
  return Math.min(burn ?? flight.time.length - 1, drop ?? flight.time.length - 1);
}

function breakTimes(flight: Flight, first: number, last: number, span: AscentSpan): number[] {
  const indices = new Set<number>([first, last, span.end]);
  for (const burn of flight.burns) for (const i of [burn.startIndex, burn.endIndex]) indices.add(i);
  for (const drop of flight.drops) for (const i of [drop.index, drop.index + 1]) indices.add(i);
  return [...indices]
    .filter((i) => i >= first && i <= last)
    .sort((a, b) => a - b)
    .map((i) => flight.time[i]!);
}

/** What could still be had at each grid point; null where the card does not tell or the log has no mass. */
function obtainableAlong(flight: Flight, index: readonly number[]): number[] | null {
  const { mass, vehicle, stage } = flight;
  if (mass === null || vehicle === null || vehicle.stages.length === 0) return null;
  const dropTimes = new Map<string, number>();
  for (const drop of flight.drops)
    if (drop.subject !== null && drop.kind !== 'separation') dropTimes.set(drop.subject, drop.time_s);
  const out: number[] = [];
  for (const i of index) {
    const gone = new Set<string>();
    for (const drop of flight.drops) {
      if (drop.subject !== null && drop.kind !== 'separation' && drop.index < i) gone.add(drop.subject);
    }
    const value = obtainableDeltaV_m_s(vehicle, {
      stage: Math.min(stage[i]!, vehicle.stages.length - 1),
      mass_kg: mass[i]!,
      time_s: Math.max(0, flight.time[i]!),
      gone,
      dropTimes_s: dropTimes,
    });
    if (value === null) return null;
    out.push(value);
  }
  return out;
}

/** The vehicle's total before the first ignition, by the log's own mass at the start. */
function wholeVehicle(flight: Flight): number | null {
  const first = flight.burns[0];
  return obtainableAlong(flight, [first === undefined ? flight.liftOffIndex : first.startIndex])?.[0] ?? null;
}

/** The last crossing from positive to negative, when the margin does not come back. */
function lastFallThroughZero(time: readonly number[], margin: readonly number[]): number | null {
  if (!(margin[margin.length - 1]! < 0)) return null;
  for (let k = margin.length - 1; k > 0; k--) {
    const a = margin[k - 1]!;
    const b = margin[k]!;
    if (a >= 0 && b < 0) return time[k - 1]! + ((time[k]! - time[k - 1]!) * a) / (a - b);
  }
  return time[0]!;
}
