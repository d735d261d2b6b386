import type { FlightResult } from '../../../src/refly/flightProgram.ts';

/** Quantities that a simulated log is made from. */
export const sampled = [
  'time_s',
  'altitude_m',
  'speed_m_s',
  'mass_kg',
  'throttle',
  'pitch_rad',
  'flightPathAngle_rad',
  'dynamicPressure_Pa',
] as const;

export type Samples = Record<(typeof sampled)[number], Float64Array>;

/** A textbook case as flown by our own equations of motion: a log of six channels, its card and the exact truth. */
export interface SimulatedFlight {
  /** Six channels, not rounded, time from lift-off. */
  readonly log: {
    readonly time_s: readonly number[];
    readonly altitude_m: readonly number[];
    readonly speed_m_s: readonly number[];
    readonly mass_kg: readonly number[];
    readonly throttle: readonly number[];
    readonly pitch_deg: readonly number[];
  };
  /** A mission card, as JSON text. */
  readonly card: string;
  /** Time of burnout, s from lift-off. */
  readonly burnout_s: number;
  /** Losses up to burnout, m/s, ground frame. */
  readonly truth: {
    readonly ideal: number;
    readonly steering: number;
    readonly drag: number;
    readonly gravity: number;
    readonly speed: number;
  };
}

/** Joins recordings into one log. */
export function logOf(...parts: readonly Samples[]): SimulatedFlight['log'] {
  const joined = (name: (typeof sampled)[number]) => parts.flatMap((p) => Array.from(p[name]));
  return {
    time_s: joined('time_s'),
    altitude_m: joined('altitude_m'),
    speed_m_s: joined('speed_m_s'),
    mass_kg: joined('mass_kg'),
    throttle: joined('throttle'),
    pitch_deg: joined('pitch_rad').map((p) => (p * 180) / Math.PI),
  };
}

/** A log as CSV text with the six headers. */
export function csvOf(log: SimulatedFlight['log']): string {
  const lines = ['time_s,altitude_m,speed_m_s,mass_kg,throttle,pitch_deg'];
  for (let i = 0; i < log.time_s.length; i++)
    lines.push(
      [log.time_s, log.altitude_m, log.speed_m_s, log.mass_kg, log.throttle, log.pitch_deg]
        .map((c) => String(c[i]))
        .join(','),
    );
  return `${lines.join('\n')}\n`;
}

/** The event of a name, which the flight must have. */
export function eventOf(result: FlightResult, name: FlightResult['events'][number]['name']) {
  const event = result.events.find((e) => e.name === name);
  if (event === undefined) throw new Error(`the simulated flight has no ${name}`);
  return event;
}
