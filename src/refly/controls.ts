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
  const breaks: number[] = [];
  for (let i = 1; i < time_s.length; i++) if (time_s[i] === time_s[i - 1]) breaks.push(time_s[i]!);
  const line = straightLines(time_s, value);
  return { at: (s) => line(s.time_s), breaks_s: breaks };
}

/** A table over another quantity of the state than time. */
export function stateTable(
  of: 'altitude_m' | 'speed_m_s',
  at: ArrayLike<number>,
  value: ArrayLike<number>,
): Program {
  const line = straightLines(at, value);
  return { at: (s) => line(s[of]) };
}

/** Straight lines between nodes with rising `x`, held beyond the ends. */
export function straightLines(x: ArrayLike<number>, y: ArrayLike<number>): (at: number) => number {
  const last = x.length - 1;
  let row = 0;
  return (at) => {
    if (at < x[0]!) return y[0]!;
    if (at >= x[last]!) return y[last]!;
    // The last row found is nearly always the row wanted or its neighbour.
    while (row > 0 && x[row]! > at) row--;
    while (row < last - 1 && x[row + 1]! <= at) row++;
    const from = x[row]!;
    const span = x[row + 1]! - from;
    const f = span > 0 ? (at - from) / span : 1;
    return y[row]! + f * (y[row + 1]! - y[row]!);
  };
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
