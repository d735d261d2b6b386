import type { Burn, Flight } from '../flight/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { Program } from './controls.ts';
import { timeTable } from './controls.ts';
import type { RocketStage } from './rocket.ts';

/** Shortest stretch over which the mass corrects the throttle, s. */
const SHORTEST_S = 2;
/** The mass is known within this part of what the stretch burns. */
const FINE_ENOUGH = 2e-4;

/**
 * Throttle of a flight as its own re-flight needs it: the logged one (full where there is none), straight between
 * rows, corrected stretch by stretch so that it burns what the mass line says was burnt. A throttle of four digits
 * is otherwise worth tens of metres at cutoff. Beside boosters and for solid motors the logged one stands.
 */
export function flownThrottle(flight: Flight, stages: readonly RocketStage[]): Program {
  const times: number[] = [];
  const values: number[] = [];
  for (const burn of flight.burns) {
    const stage = stages[burn.stage];
    const rows = indicesOf(flight, burn);
    const logged = rows.map((i) => throttleAt(flight, burn, i));
    const byMass = flight.mass !== null && stage !== undefined && stage.boosters.length === 0;
    const edges =
      byMass && stage.thrustCurve === null ? stretches(flight, rows, stage) : [0, rows.length - 1];
    for (let e = 0; e + 1 < edges.length; e++) {
      const from = edges[e]!;
      const to = edges[e + 1]!;
      const factor =
        byMass && stage.thrustCurve === null ? correction(flight, rows, logged, from, to, stage) : 1;
      for (let k = from; k <= to; k++) {
        times.push(flight.time[rows[k]!]!);
        values.push(factor * logged[k]!);
      }
    }
  }
  return timeTable(times, values);
}

/** The burn's own points: its edges and the rows between them. */
function indicesOf(flight: Flight, burn: Burn): number[] {
  const out: number[] = [];
  for (let i = burn.startIndex; i <= burn.endIndex; i++)
    if (i === burn.startIndex || i === burn.endIndex || flight.isRow[i] === 1) out.push(i);
  return out;
}

/** Logged throttle at a point of a burn; a zero at its edge is a sample of the other side. */
function throttleAt({ throttle }: Flight, burn: Burn, i: number): number {
  if (throttle === null) return 1;
  const value = throttle[i]!;
  if (value > 0) return value;
  const inside = i === burn.startIndex ? throttle[i + 1] : i === burn.endIndex ? throttle[i - 1] : value;
  return inside !== undefined && inside > 0 ? inside : 1;
}

/** Places of rows between which the mass tells the propellant finely enough, the ends among them. */
function stretches(flight: Flight, rows: readonly number[], stage: RocketStage): number[] {
  const flow = stage.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
  const length_s = Math.max(SHORTEST_S, flight.noise.mass_kg / (FINE_ENOUGH * flow));
  const end_s = flight.time[rows.at(-1)!]!;
  const edges = [0];
  for (let k = 1; k < rows.length - 1; k++) {
    const t = flight.time[rows[k]!]!;
    if (t - flight.time[rows[edges.at(-1)!]!]! >= length_s && end_s - t >= length_s) edges.push(k);
  }
  return [...edges, rows.length - 1];
}

/** What the mass says was burnt over what the logged throttle would burn. */
function correction(
  flight: Flight,
  rows: readonly number[],
  logged: readonly number[],
  from: number,
  to: number,
  stage: RocketStage,
): number {
  const flow = stage.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s);
  let wanted = 0;
  for (let k = from; k < to; k++)
    wanted += 0.5 * (logged[k]! + logged[k + 1]!) * (flight.time[rows[k + 1]!]! - flight.time[rows[k]!]!);
  const first = rows[from]!;
  const last = rows[to]!;
  const dropped = flight.drops
    .filter((d) => d.index >= first && d.index < last)
    .reduce((sum, d) => sum + d.mass_kg, 0);
  const ratio = (flight.mass![first]! - flight.mass![last]! - dropped) / (flow * wanted);
  return Number.isFinite(ratio) && ratio > 0 ? ratio : 1;
}
