import type { Flight } from '../flight/types.ts';
import { Ascent } from './ascent.ts';
import { EdgeRecorder } from './edgeRecorder.ts';
import { type FlightMakings, makingsOf } from './flightMakings.ts';
import type { FlightResult } from './flightProgram.ts';
import { timedSteps } from './flownTiming.ts';
import { place } from './motion.ts';
import type { Rocket } from './rocket.ts';

/** Model less log at the ascent's last cutoff. */
export interface ModelError {
  readonly time_s: number;
  readonly speed_m_s: number;
  readonly altitude_m: number;
  /** Null where the log has no mass. */
  readonly mass_kg: number | null;
}

export interface Reflight {
  readonly result: FlightResult;
  readonly ascent: Ascent;
  readonly trajectory: Readonly<Record<(typeof recorded)[number], Float64Array>>;
}

const recorded = [
  'time_s',
  'altitude_m',
  'radius_m',
  'speed_m_s',
  'verticalSpeed_m_s',
  'inertialSpeed_m_s',
  'inertialHorizontalSpeed_m_s',
  'flightPathAngle_rad',
  'mass_kg',
  'throttle',
  'pitch_rad',
  'dynamicPressure_Pa',
  'stage',
  'thrustVacuum_N',
] as const;

/** Flies what a flight was made of, whole or with some groups taken from elsewhere. */
export function refly(flight: Flight, makings: FlightMakings, relativeTolerance = 1e-9): Reflight {
  const { pitch, throttle, heading, start, timing } = makings;
  const ascent = new Ascent(flight.mission.world, makings.rocket, { relativeTolerance });
  const recorder = new EdgeRecorder(recorded, 0.5);
  const steps = timedSteps(timing, start.stage);
  const result = ascent.fly({ start, controls: { pitch, throttle, heading }, steps }, recorder);
  return { result, ascent, trajectory: recorder.columns() };
}

/** A flight flown again by its own controls, and how far that ends from the log: the model's error. */
export type ReflownFlight =
  | (Reflight & {
      readonly kind: 'reflown';
      readonly makings: FlightMakings;
      readonly error: ModelError;
      readonly assumed: readonly string[];
    })
  | { readonly kind: 'unavailable'; readonly reason: string };

/** Re-flies a flight from its own logged controls on the card's vehicle, or on one identified. */
export function reflyFlight(flight: Flight, identified?: Rocket): ReflownFlight {
  const known = makingsOf(flight, identified);
  if (known.kind === 'unavailable') return known;
  const { makings, assumed } = known;
  const flown = refly(flight, makings);
  if (flown.result.end === 'impact') return unavailable('flown by its own controls the rocket comes down');
  if (flown.result.end === 'stalled') return unavailable('the equations of motion could not be integrated');
  return { kind: 'reflown', ...flown, makings, error: modelError(flight, makings, flown), assumed };
}

function modelError(flight: Flight, { timing }: FlightMakings, { ascent, result }: Reflight): ModelError {
  const last = timing.burns.at(-1)!;
  const burn = flight.burns.find((b) => b.start_s === last.start_s)!;
  const i = burn.endIndex;
  const s = ascent.observe(result.time_s, result.state);
  return {
    time_s: last.end_s,
    speed_m_s: s.speed_m_s - flight.speed[i]!,
    altitude_m: s.altitude_m - flight.altitude[i]!,
    mass_kg: flight.mass === null ? null : result.state[place.mass]! - flight.mass[i]!,
  };
}

function unavailable(reason: string): { readonly kind: 'unavailable'; readonly reason: string } {
  return { kind: 'unavailable', reason };
}
