import { orbitFromPlanarState, type PlanarOrbit } from '../src/orbit/planar.ts';
import type { Ascent } from '../src/refly/ascent.ts';
import {
  alongPathHeading,
  alongPathPitch,
  type Controls,
  held,
  type Program,
} from '../src/refly/controls.ts';
import type { FlightStep } from '../src/refly/flightProgram.ts';
import type { FlightState } from '../src/refly/flightState.ts';
import type { Rocket, RocketStage } from '../src/refly/rocket.ts';
import type { World } from '../src/world/types.ts';

/** Orbit work and the way home of a capsule under parachutes. */
export interface RoundTrip {
  /** Seconds of coast before the apoapsis is raised (too early or too late for the best place). */
  readonly wait_s: number;
  readonly raiseTo_m: number;
  /** Upward speed at which the burn at apoapsis begins, so that its middle falls there. */
  readonly lead_m_s: number;
  readonly plane_s: number;
  readonly beforePlane_s: number;
  readonly beforeDeorbit_s: number;
  readonly deorbitPeriapsis_m: number;
  readonly capsule: Capsule;
}

/** The capsule: bare, then under parachutes that first open reefed. */
export interface Capsule {
  readonly bareDragArea_m2: number;
  readonly dragArea_m2: number;
  readonly reefed: number;
  readonly openAltitude_m: number;
  readonly fullAltitude_m: number;
}

/** How far down the canopies take to fill, reefed and then in full. */
const FILLING_M = [180, 50] as const;

/** Drag area of the capsule on its way down through an altitude, m². */
export function capsuleDragArea_m2(capsule: Capsule, altitude_m: number): number {
  const share = (from_m: number, way_m: number) => {
    const x = Math.min(1, Math.max(0, (from_m - altitude_m) / way_m));
    return x * x * (3 - 2 * x);
  };
  const reefed = capsule.reefed * capsule.dragArea_m2;
  return (
    capsule.bareDragArea_m2 +
    share(capsule.openAltitude_m, FILLING_M[0]) * reefed +
    share(capsule.fullAltitude_m, FILLING_M[1]) * (capsule.dragArea_m2 - reefed)
  );
}

/** The rocket with its payload as a last stage that has a drag of its own and nothing else. */
export function withCapsule(rocket: Rocket, capsule: Capsule, altitude_m: () => number): Rocket {
  const last: RocketStage = {
    name: 'capsule',
    dryMass_kg: 0,
    propellantMass_kg: 0,
    thrustVacuum_N: 0,
    ispVacuum_s: 1,
    exitArea_m2: 0,
    dragArea: () => capsuleDragArea_m2(capsule, altitude_m()),
    thrustCurve: null,
    boosters: [],
  };
  return { ...rocket, stages: [...rocket.stages, last] };
}

/** What is flown after the ascent's cutoff. */
export function roundTripSteps(world: World, trip: RoundTrip): FlightStep[] {
  const orbit = (s: FlightState): PlanarOrbit =>
    orbitFromPlanarState(world.mu_m3_s2, s.radius_m, s.verticalSpeed_m_s, s.inertialHorizontalSpeed_m_s);
  const steer = (pitch: Program, heading: Program): Controls => ({ throttle: held(1), pitch, heading });
  const along = steer(alongPathPitch, alongPathHeading);
  const aside = steer(held(0), { at: (s) => s.course_rad - Math.PI / 2 });
  const against = steer({ at: (s) => -s.flightPathAngle_rad }, { at: (s) => s.course_rad + Math.PI });
  const R = world.radius_m;
  const when = (value: (s: FlightState) => number, direction: -1 | 1) =>
    ({ kind: 'condition', value, direction }) as const;
  const after = (duration_s: number) => ({ kind: 'duration', duration_s }) as const;
  return [
    { do: 'coast', controls: along, until: after(trip.wait_s) },
    { do: 'burn', controls: along, until: when((s) => orbit(s).apoapsisRadius_m - R - trip.raiseTo_m, 1) },
    { do: 'coast', until: after(60) },
    { do: 'coast', until: when((s) => s.verticalSpeed_m_s - trip.lead_m_s, -1) },
    { do: 'burn', until: when((s) => orbit(s).periapsisRadius_m - R - trip.raiseTo_m + 4000, 1) },
    { do: 'coast', until: after(trip.beforePlane_s) },
    { do: 'burn', controls: aside, until: after(trip.plane_s) },
    { do: 'coast', controls: along, until: after(trip.beforeDeorbit_s) },
    {
      do: 'burn',
      controls: against,
      until: when((s) => orbit(s).periapsisRadius_m - R - trip.deorbitPeriapsis_m, -1),
    },
    { do: 'coast', controls: along, until: after(45) },
    { do: 'separate' },
    { do: 'coast', until: after(20_000) },
  ];
}

/** Altitude that an ascent's motion is at while its right-hand side is evaluated. */
export function altitudeOf(ascent: { current: Ascent | null }): () => number {
  return () => ascent.current?.motion.state.altitude_m ?? 0;
}
