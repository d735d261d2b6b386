import type { Flight } from '../flight/types.ts';
import type { FlownControls } from './flownControls.ts';
import { flownControls } from './flownControls.ts';
import type { FlownTiming } from './flownTiming.ts';
import { flownTiming, withDropTimes } from './flownTiming.ts';
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
