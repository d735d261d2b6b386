import type { Mission } from '../mission/types.ts';
import { orbitFromPlanarState } from '../orbit/planar.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { Ascent } from './ascent.ts';
import type { AscentFrame, AscentShape } from './ascentShape.ts';
import { ascentProgram, targetSpeed_m_s } from './ascentShape.ts';
import type { FlightResult } from './flightProgram.ts';
import { limitedThrottle } from './limitedThrottle.ts';
import { place } from './motion.ts';
import { PeakRecorder } from './peakRecorder.ts';
import type { Rocket, RocketStage } from './rocket.ts';

/** Longest integration step, s: coasts are long, and smooth. */
const LONGEST_STEP_S = 120;
/** A pressure limit is kept with this much to spare. */
const SPARE = 0.999;
/** Part of payload and last stage that burns, in thought, when the tanks are empty. */
const OVERDRAFT = 0.6;

/** Where a trial ended. */
export interface Outcome {
  readonly radius_m: number;
  readonly verticalSpeed_m_s: number;
  /** Delta-v left at the end of the flight; below zero: what the tanks lacked. */
  readonly left_m_s: number;
  /** The same less the impulse that the apoapsis still asks for, where the flight ends on a transfer. */
  readonly margin_m_s: number;
  /** Lowest radius of the coast of a transfer; infinite without one. */
  readonly lowest_m: number;
  /** 0 where nothing limits it. */
  readonly peakPressure_Pa: number;
}

/**
 * Flies shapes of an ascent for a search. A shape that asks for more than the tanks hold goes on burning payload
 * and structure, so that what is left is continuous through zero.
 */
export class TrialFlights {
  readonly frame: AscentFrame;
  /** How long the stages burn that the tangent law steers, s. */
  readonly steeredBurn_s: number;
  /** Dynamic pressure that the path has to keep to, since throttling cannot; null = none. */
  readonly pressureLimit_Pa: number | null;
  /** Flights flown so far. */
  count = 0;
  private readonly ascent: Ascent;
  private readonly virtual_kg: number;
  private readonly isp_s: number;
  private readonly peaks: PeakRecorder | null;

  /** @param relativeTolerance of the integrator */
  constructor(mission: Mission, rocket: Rocket, relativeTolerance = 1e-8) {
    const { world, limits } = mission;
    this.frame = frameOf(mission, rocket);
    const last = rocket.stages.at(-1)!;
    this.isp_s = last.ispVacuum_s;
    const overdrawn = overdraw(rocket);
    this.virtual_kg = overdrawn.virtual_kg;
    this.ascent = new Ascent(world, overdrawn.rocket, {
      carryLosses: false,
      relativeTolerance,
      maxStep_s: LONGEST_STEP_S,
    });
    const steered = rocket.stages.length > 1 ? rocket.stages.slice(1) : rocket.stages;
    this.steeredBurn_s = steered.reduce((sum, s) => sum + burnTime_s(s), 0);
    const canThrottle = (mission.vehicle?.stages[0]?.throttleMin ?? 1) < 1;
    const limit_Pa = limits.dynamicPressure_Pa;
    this.pressureLimit_Pa =
      world.atmosphere === null || canThrottle || limit_Pa === null ? null : SPARE * limit_Pa;
    this.peaks = this.pressureLimit_Pa === null ? null : new PeakRecorder();
  }

  /** Null where the shape does not come to its end: it hits the ground, or never gets the energy. */
  fly(shape: AscentShape): Outcome | null {
    this.count++;
    this.peaks?.reset();
    const { frame } = this;
    const result = this.ascent.fly(ascentProgram(frame, shape), this.peaks);
    const left_kg = result.state[place.stagePropellant]!;
    const s = this.ascent.observe(result.time_s, result.state);
    if (result.end !== 'flown' || s.stage !== frame.stages - 1 || !(left_kg > 0)) return null;
    const burnt_kg = s.mass_kg - (left_kg - this.virtual_kg);
    const left_m_s = STANDARD_GRAVITY_M_S2 * this.isp_s * Math.log(s.mass_kg / burnt_kg);
    let still_m_s = 0;
    if (shape.ending.kind === 'transfer' && frame.target.kind === 'orbit') {
      const wanted = targetSpeed_m_s(frame.world, frame.target, s.altitude_m);
      still_m_s = Math.hypot(wanted - s.inertialHorizontalSpeed_m_s, s.verticalSpeed_m_s);
    }
    const { radius_m, verticalSpeed_m_s } = s;
    return {
      radius_m,
      verticalSpeed_m_s,
      left_m_s,
      margin_m_s: left_m_s - still_m_s,
      lowest_m: shape.ending.kind === 'direct' ? Number.POSITIVE_INFINITY : this.lowest_m(result),
      peakPressure_Pa: this.peaks?.dynamicPressure_Pa ?? 0,
    };
  }

  /** Where the coast begins, or its periapsis where it begins downward. */
  private lowest_m(result: FlightResult): number {
    const cutoff = result.events.findLast((e) => e.name === 'cutoff' && e.time_s < result.time_s);
    if (cutoff === undefined) return Number.POSITIVE_INFINITY;
    const s = this.ascent.observe(cutoff.time_s, cutoff.state);
    const { mu_m3_s2 } = this.frame.world;
    // Upward, or downward in the upper half of the orbit, where the coast ends at once.
    const height = 2 - (s.radius_m * s.inertialSpeed_m_s ** 2) / mu_m3_s2;
    if (s.verticalSpeed_m_s >= 0 || height > 1) return s.radius_m;
    return orbitFromPlanarState(mu_m3_s2, s.radius_m, s.verticalSpeed_m_s, s.inertialHorizontalSpeed_m_s)
      .periapsisRadius_m;
  }
}

/** What all trials of a mission have in common. */
export function frameOf(mission: Mission, rocket: Rocket): AscentFrame {
  const { world, target, site, limits } = mission;
  const throttleMin = (mission.vehicle?.stages ?? []).map((s) => s.throttleMin);
  return {
    world,
    start: {
      kind: 'pad',
      latitude_rad: site.latitude_rad,
      longitude_rad: site.longitude_rad,
      altitude_m: site.altitude_m,
      course_rad: site.launchAzimuth_rad,
      holdDown_s: 0,
    },
    heading_rad: site.launchAzimuth_rad,
    stages: rocket.stages.length,
    reference_s: rocket.stages.length > 1 ? burnTime_s(rocket.stages[0]!) : 0,
    throttle: limitedThrottle(rocket, throttleMin, limits),
    angleOfAttackLimit_rad: limits.angleOfAttackInAir_rad,
    target,
  };
}

/** Full burn of a stage at full thrust, s. */
function burnTime_s(stage: RocketStage): number {
  if (stage.thrustCurve !== null) return stage.thrustCurve.at(-1)?.[0] ?? 0;
  return (stage.propellantMass_kg * STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s) / stage.thrustVacuum_N;
}

function overdraw(rocket: Rocket): { rocket: Rocket; virtual_kg: number } {
  const last = rocket.stages.at(-1)!;
  if (last.thrustCurve !== null) return { rocket, virtual_kg: 0 };
  const payload_kg = rocket.payload_kg * (1 - OVERDRAFT);
  const dryMass_kg = last.dryMass_kg * (1 - OVERDRAFT);
  const virtual_kg = rocket.payload_kg + last.dryMass_kg - payload_kg - dryMass_kg;
  const stage = { ...last, dryMass_kg, propellantMass_kg: last.propellantMass_kg + virtual_kg };
  return { rocket: { ...rocket, payload_kg, stages: [...rocket.stages.slice(0, -1), stage] }, virtual_kg };
}
