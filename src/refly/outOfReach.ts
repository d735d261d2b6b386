import type { Flight } from '../flight/types.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { straightLines } from './controls.ts';
import { type Insertion, LastStage, toGoProblem } from './lastStage.ts';
import type { Handover } from './mixedFlight.ts';
import { marginOf, reachesOrbit } from './reach.ts';
import { type ReflownFlight, reflyWith, throttleOf } from './reflown.ts';

/** The last instant from which orbit was in reach, and the continuation that still reaches it. */
export interface LastReach {
  /** From lift-off. */
  readonly time_s: number;
  /** How far the nose is led under the path there, rad; null in the last stage. */
  readonly lead_rad: number | null;
  readonly end: Insertion | null;
}

/** From a moment of the first stages on the nose is led so far under the path at first, rad. */
const LEADS = [0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64];
const CLOSING = 5;
/** A second of flight is worth more than this. */
const COARSE_M_S = 2;
const BEGINNINGS_S = [15, 30, 45];

/**
 * The last instant from which the best continuation still reaches orbit, s from lift-off (METHODS §7): in the last
 * stage steered anew from the state there; before it with the nose led under the path from there on. Earlier than the
 * last fall of the margin through zero, since real thrust is finite.
 * @returns time 0 where no continuation does; null where the flight could still have made it at its end
 */
export function lastReach(base: ReflownFlight, flight: Flight): LastReach | null {
  const { mission, script, last, handover } = base;
  const problem = toGoProblem(mission);
  if (problem === null) return null;
  if (reachesOrbit(mission, base.steered)) {
    const stage = new LastStage(mission, problem, script, last);
    const fromThere = (t: number): boolean => {
      const from = stateAt(base, flight, t);
      return from !== null && reachesOrbit(mission, stage.steerAnew(from, throttleOf(script, last)));
    };
    const end = base.flown.end.time_s;
    if (fromThere(end - 0.5)) return null;
    return { time_s: closeIn(fromThere, handover.start.time_s, end), lead_rad: null, end: null };
  }
  let latest: LastReach = { time_s: 0, lead_rad: null, end: null };
  const turned = (from_s: number): boolean => {
    let best = { lead_rad: LEADS[0]!, margin: Number.NEGATIVE_INFINITY };
    const works = (lead_rad: number): boolean => {
      const end = reflyWith(base, script, { from_s, lead_rad }, COARSE_M_S);
      const margin = end === null ? Number.NEGATIVE_INFINITY : marginOf(end);
      if (margin > best.margin) best = { lead_rad, margin };
      if (!reachesOrbit(mission, end)) return false;
      latest = { time_s: from_s, lead_rad, end };
      return true;
    };
    if (LEADS.some(works)) return true;
    for (let step = Math.SQRT2; step > 1.05; step = Math.sqrt(step)) {
      const { lead_rad } = best;
      if (works(lead_rad * step) || works(lead_rad / step)) return true;
    }
    return false;
  };
  // Straight up there is no path to lead the nose under: the turn can begin when there is some speed.
  const first_s = BEGINNINGS_S.find((t) => t < handover.start.time_s && turned(t));
  if (first_s !== undefined) closeIn(turned, first_s, handover.start.time_s);
  return latest;
}

/** Between a time at which it can and one at which it cannot. */
function closeIn(can: (t: number) => boolean, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let k = 0; k < CLOSING; k++) {
    const middle = (from + to) / 2;
    if (can(middle)) from = middle;
    else to = middle;
  }
  return from;
}

/** The logged flight's state inside its last stage as a start. */
function stateAt(base: ReflownFlight, flight: Flight, t: number): Handover | null {
  const { handover, script } = base;
  let i = 0;
  while (i < flight.time.length - 1 && flight.time[i]! < t) i++;
  if (flight.mass === null || i === 0) return null;
  const at = (column: Float64Array): number =>
    straightLines([flight.time[i - 1]!, flight.time[i]!], [column[i - 1]!, column[i]!])(t);
  const stage = script.rocket.stages[base.lastStage]!;
  const mass_kg = at(flight.mass);
  const dry_kg = handover.start.mass_kg - handover.start.stagePropellant_kg;
  const exhaust = STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s;
  return {
    start: {
      ...handover.start,
      time_s: t,
      latitude_rad: at(flight.track.latitude),
      longitude_rad: at(flight.track.longitude),
      altitude_m: at(flight.altitude),
      speed_m_s: at(flight.speed),
      flightPathAngle_rad: at(flight.flightPathAngle),
      course_rad: at(flight.track.course),
      stagePropellant_kg: Math.max(0, mass_kg - dry_kg),
      mass_kg,
    },
    spent_m_s: handover.spent_m_s + exhaust * Math.log(handover.start.mass_kg / mass_kg),
  };
}
