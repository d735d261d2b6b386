import { readMission } from '../src/mission/readCard.ts';
import type { Mission } from '../src/mission/types.ts';
import { Ascent } from '../src/refly/ascent.ts';
import { classicAscent } from '../src/refly/classicAscent.ts';
import type { Program } from '../src/refly/controls.ts';
import { alongPathPitch } from '../src/refly/controls.ts';
import type { FlightResult, FlightStep } from '../src/refly/flightProgram.ts';
import type { FlightState } from '../src/refly/flightState.ts';
import { SteadyRecorder } from '../src/refly/recorder.ts';
import { rocketOf } from '../src/refly/rocketOf.ts';
import type { World } from '../src/world/types.ts';
import type { RoundTrip } from './roundTrip.ts';
import { altitudeOf, roundTripSteps, withCapsule } from './roundTrip.ts';
import type { Aim } from './tune.ts';
import { tuneTangent } from './tune.ts';

const degree = Math.PI / 180;

const recorded = [
  'time_s',
  'altitude_m',
  'speed_m_s',
  'verticalSpeed_m_s',
  'mass_kg',
  'throttle',
  'pitch_rad',
  'heading_rad',
  'course_rad',
  'latitude_rad',
  'longitude_rad',
] as const;

/** Columns of a computed flight, before they are rounded and written in a logger's units. */
export type Track = Record<(typeof recorded)[number], Float64Array>;

/** A computed flight. */
export interface Computed {
  readonly track: Track;
  readonly mission: Mission;
  readonly result: FlightResult;
  readonly ascent: Ascent;
}

/** How a pilot flies: the kick, where the last burn ends, and what comes after it. */
export interface Style {
  readonly kick_deg: number;
  readonly kickSpeed_m_s: number;
  readonly holdDown_s: number;
  /** Inertial speed at which the last burn is stopped, less that of the target's circular orbit, m/s. */
  readonly speedMissed_m_s: number;
  readonly aim: Aim;
  /** Seconds of coast after the last cutoff. */
  readonly coast_s: number;
  /** Seconds on the pad before ignition. */
  readonly pad_s: number;
  readonly rate_Hz: number;
  readonly throttle?: Program;
  /** The last stage is dropped off and never lit. */
  readonly neverLit?: boolean;
  /** Orbit work and the way home, flown after the ascent; the log is then thinned where nothing happens. */
  readonly roundTrip?: RoundTrip;
}

/**
 * Reads a card, tunes the last stage's steering so that its burn ends at the aim, and flies it; or, with
 * `neverLit`, flies on without that burn.
 */
export function compute(card: object, style: Style): Computed {
  const mission = readMission({ card: { name: 'sample card', text: JSON.stringify(card) } });
  const rocket = mission.vehicle === null ? null : rocketOf(mission.vehicle).rocket;
  if (rocket === null || mission.target.kind !== 'orbit') throw new Error('a sample card lacks something');
  const { world, site } = mission;
  const targetRadius_m = world.radius_m + mission.target.apoapsisAltitude_m;
  const stopSpeed_m_s = Math.sqrt(world.mu_m3_s2 / targetRadius_m) - style.speedMissed_m_s;
  // Stopped by energy, as guidance would: at the speed wanted, were it at the target's radius.
  const energy = stopSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / targetRadius_m;
  const shape = {
    start: {
      kind: 'pad' as const,
      latitude_rad: site.latitude_rad,
      longitude_rad: site.longitude_rad,
      altitude_m: site.altitude_m,
      course_rad: site.launchAzimuth_rad,
      holdDown_s: style.holdDown_s,
    },
    heading_rad: site.launchAzimuth_rad,
    stages: rocket.stages.length,
    kickSpeed_m_s: style.kickSpeed_m_s,
    kick_rad: style.kick_deg * degree,
    kickRate_rad_s: 1.5 * degree,
    separationDelay_s: 1.5,
    ignitionDelay_s: 2,
    cutoff: {
      kind: 'condition' as const,
      value: (s: FlightState) => s.inertialSpeed_m_s ** 2 / 2 - world.mu_m3_s2 / s.radius_m - energy,
      direction: 1 as const,
    },
    ...(style.throttle === undefined ? {} : { throttle: style.throttle }),
  };
  const search = new Ascent(world, rocket, { carryLosses: false, relativeTolerance: 1e-8 });
  const tuned = style.neverLit ? { ...shape, a: 0, b: 0 } : tuneTangent(search, shape, style.aim);
  if (tuned === null) throw new Error(`no steering found for a kick of ${style.kick_deg}°`);
  const program = classicAscent(tuned);
  const coast: FlightStep = {
    do: 'coast',
    controls: { ...program.controls, pitch: alongPathPitch },
    until: { kind: 'duration', duration_s: style.coast_s },
  };
  const flown = style.neverLit ? program.steps.slice(0, -1) : program.steps;
  const recorder = new SteadyRecorder(recorded, 1 / style.rate_Hz, -style.holdDown_s);
  const trip = style.roundTrip;
  if (trip === undefined) {
    const ascent = new Ascent(world, rocket);
    const result = ascent.fly({ ...program, steps: [...flown, coast] }, recorder);
    return { track: standing(recorder.columns(), style), mission, result, ascent };
  }
  const flying: { current: Ascent | null } = { current: null };
  const ascent = new Ascent(world, withCapsule(rocket, trip.capsule, altitudeOf(flying)), { maxStep_s: 5 });
  flying.current = ascent;
  const result = ascent.fly({ ...program, steps: [...flown, ...roundTripSteps(world, trip)] }, recorder);
  const track = rested(thinned(standing(recorder.columns(), style), result, world, trip), style);
  return { track, mission, result, ascent };
}

/** Least seconds between rows: where nothing happens, in the air or under thrust, about events. */
const PACE_S = { quiet: 20, busy: 1, sharp: 0 } as const;

/** Leaves rows out where little happens, as loggers do to save room. */
function thinned(track: Track, result: FlightResult, world: World, trip: RoundTrip): Track {
  const top_m = world.atmosphere?.top_m ?? 0;
  const marks = result.events.map((e) => e.time_s);
  const { openAltitude_m, fullAltitude_m } = trip.capsule;
  const pace = (i: number): number => {
    const [t, h] = [track.time_s[i]!, track.altitude_m[i]!];
    const opening = [openAltitude_m, fullAltitude_m].some((from) => h < from + 400 && h > from - 700);
    if (marks.some((m) => Math.abs(t - m) < 10) || (opening && t > 1000)) return PACE_S.sharp;
    return track.throttle[i]! > 0 || h < top_m + 5000 ? PACE_S.busy : PACE_S.quiet;
  };
  const keep: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  track.time_s.forEach((t, i) => {
    if (t - last < pace(i) - 1e-6) return;
    keep.push(i);
    last = t;
  });
  const out = {} as Track;
  for (const name of recorded) out[name] = Float64Array.from(keep, (i) => track[name][i]!);
  return out;
}

/** Puts ten seconds at rest after a landing. */
function rested(track: Track, style: Style): Track {
  const n = track.time_s.length;
  const first = Math.ceil(track.time_s[n - 1]! * style.rate_Hz + 0.5) / style.rate_Hz;
  const out = {} as Track;
  for (const name of recorded) {
    const after = Array.from({ length: Math.round(10 * style.rate_Hz) }, (_, i) => {
      if (name === 'time_s') return first + i / style.rate_Hz;
      if (name === 'altitude_m' || name === 'speed_m_s' || name === 'verticalSpeed_m_s') return 0;
      return track[name][n - 1]!;
    });
    out[name] = Float64Array.from([...track[name], ...after]);
  }
  return out;
}

/** Puts rows before ignition, in which the rocket just stands there. */
function standing(track: Track, style: Style): Track {
  const rows = Math.round(style.pad_s * style.rate_Hz);
  const out = {} as Track;
  for (const name of recorded) {
    const before = Array.from({ length: rows }, (_, i) => {
      if (name === 'time_s') return track.time_s[0]! - (rows - i) / style.rate_Hz;
      return name === 'throttle' ? 0 : track[name][0]!;
    });
    out[name] = Float64Array.from([...before, ...track[name]]);
  }
  return out;
}
