import { Ascent } from '../src/refly/ascent.ts';
import { alongPathHeading, alongPathPitch, held } from '../src/refly/controls.ts';
import { SteadyRecorder } from '../src/refly/recorder.ts';
import type { RocketStage } from '../src/refly/rocket.ts';
import { exponentialAtmosphere } from '../src/world/atmosphere/exponential.ts';
import type { World } from '../src/world/types.ts';

/** A body without thrust, let fall by the equations of motion. */
export interface Falling {
  readonly mu_m3_s2: number;
  readonly radius_m: number;
  readonly density_kg_m3: number;
  readonly scaleHeight_m: number;
  /** m/(Cd·A), kg/m². */
  readonly ballisticCoefficient_kg_m2: number;
  readonly altitude_m: number;
  readonly speed_m_s: number;
  /** Above the horizontal, rad. */
  readonly angle_rad: number;
  readonly shape: 'sphere' | 'flat';
  readonly period_s: number;
}

/** Path of the body down to the ground: time, altitude, speed and drag over mass (m/s²). */
export function fall(body: Falling) {
  const world: World = {
    name: 'test world',
    mu_m3_s2: body.mu_m3_s2,
    radius_m: body.radius_m,
    spin_rad_s: 0,
    orbitFloor_m: 0,
    ellipsoid: null,
    atmosphere: exponentialAtmosphere(
      {
        surfacePressure_Pa: 100_000,
        surfaceDensity_kg_m3: body.density_kg_m3,
        scaleHeight_m: body.scaleHeight_m,
        top_m: 1e9,
        heatCapacityRatio: 1.4,
      },
      'test',
    ),
    source: 'test',
  };
  const stage: RocketStage = {
    name: 'body',
    dryMass_kg: 0,
    propellantMass_kg: 0,
    thrustVacuum_N: 0,
    ispVacuum_s: 1,
    exitArea_m2: 0,
    dragArea: () => 1 / body.ballisticCoefficient_kg_m2,
    thrustCurve: null,
    boosters: [],
  };
  const ascent = new Ascent(
    world,
    { payload_kg: 1, stages: [stage], jettisons: [] },
    { shape: body.shape, maxStep_s: 0.05, relativeTolerance: 1e-11 },
  );
  const recorder = new SteadyRecorder(
    ['time_s', 'altitude_m', 'speed_m_s', 'drag_N', 'verticalSpeed_m_s'] as const,
    body.period_s,
  );
  ascent.fly(
    {
      start: {
        kind: 'flight',
        time_s: 0,
        latitude_rad: 0,
        longitude_rad: 0,
        altitude_m: body.altitude_m,
        speed_m_s: body.speed_m_s,
        flightPathAngle_rad: body.angle_rad,
        course_rad: Math.PI / 2,
        stage: 0,
        stagePropellant_kg: 0,
        mass_kg: 1,
      },
      controls: { throttle: held(0), pitch: alongPathPitch, heading: alongPathHeading },
      steps: [{ do: 'coast', until: { kind: 'duration', duration_s: 1e5 } }],
    },
    recorder,
  );
  return recorder.columns();
}
