import type { Flight } from '../flight/types.ts';
import { Ascent } from './ascent.ts';
import { EdgeRecorder } from './edgeRecorder.ts';
import type { FlightResult } from './flightProgram.ts';
import type { FlownControls } from './flownControls.ts';
import { flownControls } from './flownControls.ts';
import type { FlownTiming } from './flownTiming.ts';
import { flownTiming, timedSteps, withDropTimes } from './flownTiming.ts';
import { place } from './motion.ts';
import type { Rocket } from './rocket.ts';
import { fullMass_kg } from './rocket.ts';
import { rocketOf } from './rocketOf.ts';
import type { Start } from './start.ts';

/** Everything that decides a flight, in the groups that a comparison swaps (METHODS §7). */
export interface FlightMakings extends FlownControls {
  readonly timing: FlownTiming;
  readonly rocket: Rocket;
  readonly start: Start & { readonly kind: 'flight' };
}

export type MakingsResult =
  | { readonly kind: 'known'; readonly makings: FlightMakings; readonly assumed: readonly string[] }
  | { readonly kind: 'unavailable'; readonly reason: string };

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

/** Speed given to a rocket let go on the pad, so that it has a direction from the start, m/s. */
const LET_GO_M_S = 0.01;

/**
 * What a flight was made of: its logged controls, its timing, and the card's rocket (or the one given, as
 * identified) with the mass that the log shows at the start.
 */
export function makingsOf(flight: Flight, identified?: Rocket): MakingsResult {
  const { vehicle } = flight.mission;
  if (vehicle === null && identified === undefined) return unavailable('the card has no vehicle');
  const carded = vehicle === null ? null : rocketOf(vehicle);
  const bare = identified ?? carded?.rocket ?? null;
  if (bare === null) return unavailable(`the card lacks ${carded?.missing.join(', ')}`);
  const controls = flownControls(flight, bare.stages);
  if (controls === null) return unavailable('the log has no pitch');
  if (flight.burns.length === 0) return unavailable('the log shows no burn');
  const timing = flownTiming(flight);
  const rocket = withDropTimes(bare, timing.drops_s);
  return {
    kind: 'known',
    makings: { ...controls, timing, rocket, start: startOf(flight, rocket) },
    assumed: identified === undefined ? (carded?.assumed ?? []) : [],
  };
}

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

/** The state at lift-off, or at the first row of a log that begins in flight. */
function startOf(flight: Flight, rocket: Rocket): FlightMakings['start'] {
  const i = flight.liftOffIndex;
  const stage = flight.stage[i]!;
  const still = !(flight.speed[i]! > LET_GO_M_S);
  const dropped = rocket.stages
    .slice(0, stage)
    .reduce((sum, s) => sum + s.dryMass_kg + s.propellantMass_kg, 0);
  const whole_kg = fullMass_kg(rocket) - dropped;
  const full_kg = rocket.stages[stage]?.propellantMass_kg ?? 0;
  const mass_kg = flight.mass?.[i] ?? whole_kg;
  // What is not aboard any more was burnt, boosters' propellant in its place; what is too much is load.
  return {
    kind: 'flight',
    time_s: flight.time[i]!,
    latitude_rad: flight.track.latitude[i]!,
    longitude_rad: flight.track.longitude[i]!,
    altitude_m: flight.altitude[i]!,
    speed_m_s: still ? LET_GO_M_S : flight.speed[i]!,
    flightPathAngle_rad: still ? Math.PI / 2 : flight.flightPathAngle[i]!,
    course_rad: flight.track.course[i]!,
    stage,
    stagePropellant_kg: Math.min(full_kg, Math.max(0, full_kg - (whole_kg - mass_kg))),
    mass_kg,
  };
}

function unavailable(reason: string): { readonly kind: 'unavailable'; readonly reason: string } {
  return { kind: 'unavailable', reason };
}
