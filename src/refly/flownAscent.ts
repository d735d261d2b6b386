import { obtainableDeltaV_m_s } from '../mission/obtainable.ts';
import type { Mission } from '../mission/types.ts';
import { sparseControls } from '../plan/sparseControls.ts';
import type { AscentPlan } from '../plan/types.ts';
import { Ascent } from './ascent.ts';
import type { AscentShape } from './ascentShape.ts';
import { ascentProgram } from './ascentShape.ts';
import { EdgeRecorder } from './edgeRecorder.ts';
import type { FlightEvent, FlightResult } from './flightProgram.ts';
import type { Rocket } from './rocket.ts';
import { DENSE_AIR_PA } from './steering.ts';
import { frameOf } from './trialFlights.ts';

const recorded = [
  'time_s',
  'altitude_m',
  'radius_m',
  'speed_m_s',
  'verticalSpeed_m_s',
  'inertialSpeed_m_s',
  'inertialHorizontalSpeed_m_s',
  'flightPathAngle_rad',
  'course_rad',
  'latitude_rad',
  'longitude_rad',
  'mass_kg',
  'stage',
  'throttle',
  'pitch_rad',
  'heading_rad',
  'thrust_N',
  'thrustVacuum_N',
  'drag_N',
  'dynamicPressure_Pa',
  'mach',
] as const;

/** A computed flight, one array a quantity (see `FlightState`); at a step two rows stand at one time. */
export type Trajectory = Readonly<Record<(typeof recorded)[number], Float64Array>>;

/** Greatest values met on the way. */
export interface Peaks {
  readonly dynamicPressure_Pa: number;
  /** Thrust less drag, over mass. */
  readonly acceleration_m_s2: number;
  /** Between thrust axis and path where the dynamic pressure is over 2 kPa. */
  readonly angleOfAttackInAir_rad: number;
}

/** An ascent flown in full. */
export interface FlownAscent {
  readonly trajectory: Trajectory;
  readonly events: readonly FlightEvent[];
  readonly result: FlightResult;
  readonly plan: AscentPlan;
  readonly peaks: Peaks;
  /** Vacuum delta-v obtainable at the end from what is aboard (METHODS §5), m/s; null where the card does not tell. */
  readonly obtainable_m_s: number | null;
}

/** Time between two samples, s. */
const PERIOD_S = 0.5;

/** Flies a shape with the rocket as it is and takes down everything; `relativeTolerance` of the integrator. */
export function flyAscent(
  mission: Mission,
  rocket: Rocket,
  shape: AscentShape,
  relativeTolerance = 1e-10,
): FlownAscent {
  const ascent = new Ascent(mission.world, rocket, { relativeTolerance });
  const recorder = new EdgeRecorder(recorded, PERIOD_S);
  const result = ascent.fly(ascentProgram(frameOf(mission, rocket), shape), recorder);
  const trajectory = recorder.columns();
  const { time_s, pitch_rad, throttle } = trajectory;
  const dense = Array.from(time_s, (t, i) => ({
    time_s: t,
    pitch_rad: pitch_rad[i]!,
    throttle: throttle[i]!,
  }));
  return {
    trajectory,
    events: result.events,
    result,
    plan: {
      rows: sparseControls(dense),
      events: result.events.map((e) => ({
        name: e.subject === null ? e.name : `${e.name} (${e.subject})`,
        time_s: e.time_s,
      })),
    },
    peaks: peaksOf(trajectory),
    obtainable_m_s: obtainableAt(mission, result, trajectory),
  };
}

function obtainableAt(mission: Mission, result: FlightResult, trajectory: Trajectory): number | null {
  if (mission.vehicle === null) return null;
  const gone = new Set<string>();
  for (const e of result.events)
    if ((e.name === 'jettison' || e.name === 'booster-separation') && e.subject !== null) gone.add(e.subject);
  return obtainableDeltaV_m_s(mission.vehicle, {
    stage: trajectory.stage.at(-1) ?? 0,
    mass_kg: trajectory.mass_kg.at(-1) ?? Number.NaN,
    time_s: result.time_s,
    gone,
    dropTimes_s: new Map(),
  });
}

function peaksOf(t: Trajectory): Peaks {
  let pressure = 0;
  let acceleration = 0;
  let attack = 0;
  for (let i = 0; i < t.time_s.length; i++) {
    pressure = Math.max(pressure, t.dynamicPressure_Pa[i]!);
    acceleration = Math.max(acceleration, Math.abs(t.thrust_N[i]! - t.drag_N[i]!) / t.mass_kg[i]!);
    if (t.dynamicPressure_Pa[i]! > DENSE_AIR_PA && t.throttle[i]! > 0)
      attack = Math.max(attack, Math.abs(t.pitch_rad[i]! - t.flightPathAngle_rad[i]!));
  }
  return {
    dynamicPressure_Pa: pressure,
    acceleration_m_s2: acceleration,
    angleOfAttackInAir_rad: attack,
  };
}
