import type { FlightState } from './flightState.ts';

/**
 * One control of a flight as a function of time and state: throttle (fraction of full) or an angle in rad. It
 * sees everything of the state that does not depend on the controls themselves.
 */
export interface Program {
  readonly at: (s: FlightState) => number;
  /** Times from lift-off at which the program or its slope jumps: the integrator is restarted there. */
  readonly breaks_s?: readonly number[];
}

/** The three controls of a point mass; re-flights swap them one by one. */
export interface Controls {
  /** Fraction of full vacuum thrust of the present stage; boosters always burn in full. */
  readonly throttle: Program;
  /** Thrust axis above the local horizontal. */
  readonly pitch: Program;
  /** Heading of the thrust axis, from north through east. */
  readonly heading: Program;
}

/** A control that stays as it is. */
export function held(value: number): Program {
  return { at: () => value };
}

/** Thrust along the ground-relative path: the pitch and heading of a gravity turn. */
export const alongPathPitch: Program = { at: (s) => s.flightPathAngle_rad };
export const alongPathHeading: Program = { at: (s) => s.course_rad };

/**
 * Linear-tangent steering (Lawden 1963): tan θ = a − b·t, t since the flight's present step began.
 * @param a tangent of the pitch at the step's start
 * @param b its fall per second
 */
export function linearTangent(a: number, b: number): Program {
  return { at: (s) => Math.atan(a - b * s.sinceStep_s) };
}

/**
 * A logged or planned table over time from lift-off (s, rising), linear between its rows and held beyond its
 * ends. Equal times in two rows make a step, at which the integrator restarts; the table's other kinks are left
 * to step control.
 */
export function timeTable(time_s: ArrayLike<number>, value: ArrayLike<number>): Program {
  const last = time_s.length - 1;
  const breaks: number[] = [];
  for (let i = 1; i <= last; i++) if (time_s[i] === time_s[i - 1]) breaks.push(time_s[i]!);
  let row = 0;
  const at = (s: FlightState) => {
    const t = s.time_s;
    if (t < time_s[0]!) return value[0]!;
    if (t >= time_s[last]!) return value[last]!;
    // The last row found is nearly always the row wanted or its neighbour.
    while (row > 0 && time_s[row]! > t) row--;
    while (row < last - 1 && time_s[row + 1]! <= t) row++;
    const from = time_s[row]!;
    const span = time_s[row + 1]! - from;
    const f = span > 0 ? (t - from) / span : 1;
    return value[row]! + f * (value[row + 1]! - value[row]!);
  };
  return { at, breaks_s: breaks };
}

/** The same with headings in rad, led over north the short way round. */
export function headingTable(time_s: ArrayLike<number>, heading_rad: ArrayLike<number>): Program {
  const unwrapped = Float64Array.from(heading_rad);
  for (let i = 1; i < unwrapped.length; i++) {
    const turn = unwrapped[i]! - unwrapped[i - 1]!;
    unwrapped[i] = unwrapped[i]! - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  }
  return timeTable(time_s, unwrapped);
}
