import { toGoTarget } from '../ledger/budget.ts';
import type { Mission } from '../mission/types.ts';
import { deltaVToGo, type ToGoProblem } from '../orbit/toGo.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { Ascent } from './ascent.ts';
import { lastBurns } from './ascentShape.ts';
import { held, type Program } from './controls.ts';
import type { FlightEvent, FlightStep } from './flightProgram.ts';
import type { FlightScript } from './flightScript.ts';
import { scriptedPropellant_kg } from './flightScript.ts';
import type { FlightState } from './flightState.ts';
import { burnSteps, type Handover, type Mix } from './mixedFlight.ts';
import { place } from './motion.ts';
import { nelderMead } from './nelderMead.ts';
import { SteadyRecorder } from './recorder.ts';
import type { RocketStage } from './rocket.ts';
import { untilTargetEnergy } from './targetEnergy.ts';

/** How a flight's last stage ended. */
export interface Insertion {
  /** Projected total there: spent and to go, m/s. */
  readonly total_m_s: number;
  readonly spent_m_s: number;
  readonly toGo_m_s: number;
  /** Vacuum delta-v still in the stage, m/s. */
  readonly left_m_s: number;
  readonly time_s: number;
  readonly mass_kg: number;
  readonly radius_m: number;
  readonly radialSpeed_m_s: number;
  readonly tangentialSpeed_m_s: number;
}

const names = ['time_s', 'radius_m', 'verticalSpeed_m_s', 'inertialHorizontalSpeed_m_s', 'mass_kg'] as const;

/** Weight of what is left to go beside the projected total in the search for a steering. */
const TO_GO_WEIGHT = 8;
/** One unit of the missing speed in that search, m/s. */
const MISSING_UNIT_M_S = 100;

/** The problem of delta-v to go; null where the target has none. */
export function toGoProblem({ world, target }: Mission): ToGoProblem | null {
  const goal = toGoTarget(target, world.radius_m);
  if (goal === null) return null;
  return { mu_m3_s2: world.mu_m3_s2, floorRadius_m: world.radius_m + world.orbitFloor_m, target: goal };
}

/** Flies the last stage of a mission from a handover, as often as asked. */
export class LastStage {
  private readonly ascent: Ascent;
  private readonly mission: Mission;
  private readonly problem: ToGoProblem;
  private readonly script: FlightScript;
  readonly stage: number;

  /** @param script whose rocket is flown */
  constructor(mission: Mission, problem: ToGoProblem, script: FlightScript, stage: number) {
    this.ascent = new Ascent(mission.world, script.rocket, { carryLosses: false, relativeTolerance: 1e-7 });
    this.mission = mission;
    this.problem = problem;
    this.script = script;
    this.stage = stage;
  }

  /** Burning the whole stage at full thrust takes so long, s. */
  get burn_s(): number {
    const s = this.engine;
    return (
      (scriptedPropellant_kg(this.script, this.stage) * STANDARD_GRAVITY_M_S2 * s.ispVacuum_s) /
      s.thrustVacuum_N
    );
  }

  private get engine(): RocketStage {
    return this.script.rocket.stages[this.script.stages[this.stage]!.stage]!;
  }

  /**
   * The linear-tangent steering (Lawden 1963) from a handover that reaches the target for the least projected
   * total, or comes nearest to it; cut off at the target's energy or when the stage is empty, or, where the script
   * lights the stage again, on a transfer to the target's apoapsis with a second burn there. What is left to go
   * weighs more than what is spent, so that the burns themselves end in the target orbit where they can.
   * @param guess a steering to try besides the usual ones
   * @param within_m_s how close to the best the search has to come
   */
  steerAnew(from: Handover, throttle: Program, guess?: Steered, within_m_s = 0.02): Insertion & Steered {
    const missing = this.script.relit ? this.usualMissing_m_s() : null;
    const steeringOf = (x: readonly number[]): Steered => ({
      tangent: x[0]!,
      endTangent: x[1]!,
      missing_m_s: missing === null ? null : Math.max(1, MISSING_UNIT_M_S * x[2]!),
    });
    const fly = (x: readonly number[]): Insertion =>
      this.fly(from, this.steeredBurns(throttle, steeringOf(x), from.start.course_rad));
    const third = (m: number): number[] => (missing === null ? [] : [m / MISSING_UNIT_M_S]);
    const usual = missing ?? 0;
    const tries: (readonly number[])[] =
      guess === undefined ? [] : [[guess.tangent, guess.endTangent, ...third(guess.missing_m_s ?? usual)]];
    const bends = guess === undefined ? [-0.35, 0, 0.3] : [0];
    for (const a of [0, 0.35, 0.9, 2]) for (const b of bends) tries.push([a, b, ...third(usual)]);
    const merit = (x: readonly number[]): number => {
      const end = fly(x);
      return end.total_m_s + TO_GO_WEIGHT * end.toGo_m_s;
    };
    const ranked = tries.map((x) => ({ x, f: merit(x) })).sort((p, q) => p.f - q.f);
    const most = (within_m_s < 1 ? 120 : 45) * (missing === null ? 1 : 2);
    const steps = missing === null ? [0.12, 0.12] : [0.12, 0.12, 0.2];
    const best = nelderMead(merit, ranked[0]!.x, steps, within_m_s, most);
    return { ...fly(best.x), ...steeringOf(best.x) };
  }

  /**
   * The burns of a steering: tan θ led straight from `tangent` at the start to `endTangent` after `burn_s`, cut off at
   * the target's energy or short of it, then a coast and a level burn.
   */
  steeredBurns(throttle: Program, steering: Steered, heading_rad: number): FlightStep[] {
    const { tangent, endTangent, missing_m_s } = steering;
    const fall = (tangent - endTangent) / this.burn_s;
    const { world, target } = this.mission;
    const heading = held(heading_rad);
    const pitch = { at: (s: FlightState) => Math.atan(tangent - fall * s.sinceStep_s) };
    const controls = { throttle, pitch, heading };
    if (missing_m_s === null) return [{ do: 'burn', controls, until: untilTargetEnergy(world, target) }];
    // The second burn begins half its length before the apoapsis: so long the climb takes to end there.
    const { thrustVacuum_N } = this.engine;
    const climb_m_s = (s: FlightState): number => {
      const half_s = (0.5 * missing_m_s * s.mass_kg) / thrustVacuum_N;
      const fall_m_s2 = world.mu_m3_s2 / s.radius_m ** 2 - s.inertialHorizontalSpeed_m_s ** 2 / s.radius_m;
      return Math.max(0, half_s * fall_m_s2);
    };
    const ending = { kind: 'relight', missing_m_s, climb_m_s } as const;
    return lastBurns({ world, target }, ending, controls, { ...controls, pitch: held(0) });
  }

  /** Speed missing at the target's apoapsis on a transfer that just clears the orbit floor, m/s; null without one. */
  private usualMissing_m_s(): number | null {
    const { world, target } = this.mission;
    if (target.kind !== 'orbit') return null;
    const apoapsis_m = world.radius_m + target.apoapsisAltitude_m;
    const low_m = world.radius_m + Math.min(world.orbitFloor_m, target.periapsisAltitude_m);
    const speed = (periapsis_m: number): number =>
      Math.sqrt(world.mu_m3_s2 * (2 / apoapsis_m - 2 / (apoapsis_m + periapsis_m)));
    return Math.max(1, speed(world.radius_m + target.periapsisAltitude_m) - speed(low_m));
  }

  /** Flies steps from a handover and says how they ended. */
  fly(from: Handover, steps: readonly FlightStep[]): Insertion {
    const controls = { throttle: held(1), pitch: held(0), heading: held(from.start.course_rad) };
    const result = this.ascent.fly({ start: from.start, controls, steps });
    const s = this.ascent.observe(result.time_s, result.state);
    return this.insertion(from, result.events, {
      time_s: s.time_s,
      radius_m: s.radius_m,
      verticalSpeed_m_s: s.verticalSpeed_m_s,
      inertialHorizontalSpeed_m_s: s.inertialHorizontalSpeed_m_s,
      mass_kg: s.mass_kg,
    });
  }

  /**
   * Flies the last stage of a mix as its scripts say.
   * @returns how it ended, and how it would have, cut off where the delta-v to go was least
   */
  asScripted(from: Handover, mix: Mix): { readonly end: Insertion; readonly best: Insertion } {
    const recorder = new SteadyRecorder(names, 0.1, from.start.time_s);
    const steps = burnSteps(mix, this.stage, this.mission);
    const controls = { throttle: held(1), pitch: held(0), heading: held(from.start.course_rad) };
    const { events } = this.ascent.fly({ start: from.start, controls, steps }, recorder);
    const c = recorder.columns();
    const n = c.time_s.length;
    const at = (i: number): Insertion =>
      this.insertion(from, events, {
        time_s: c.time_s[i]!,
        radius_m: c.radius_m[i]!,
        verticalSpeed_m_s: c.verticalSpeed_m_s[i]!,
        inertialHorizontalSpeed_m_s: c.inertialHorizontalSpeed_m_s[i]!,
        mass_kg: c.mass_kg[i]!,
      });
    const end = at(n - 1);
    // C falls to its least and rises from there: walk back in steps that grow, then halve.
    let high = n - 1;
    let step = 1;
    let least = end.toGo_m_s;
    let k = n - 1;
    while (k - step > 0) {
      const value = at(k - step).toGo_m_s;
      if (value > least) break;
      least = value;
      high = k;
      k -= step;
      step *= 2;
    }
    let low = Math.max(0, k - step);
    while (high - low > 2) {
      const a = low + Math.floor((high - low) / 3);
      const b = high - Math.floor((high - low) / 3);
      if (at(a).toGo_m_s <= at(b).toGo_m_s) high = b;
      else low = a;
      if (a === b || b - a < 1) break;
    }
    let best = end;
    for (let i = low; i <= high; i++) {
      const here = at(i);
      if (here.toGo_m_s < best.toGo_m_s) best = here;
    }
    return { end, best };
  }

  private insertion(
    from: Handover,
    events: readonly FlightEvent[],
    s: Record<(typeof names)[number], number>,
  ): Insertion {
    const exhaust = STANDARD_GRAVITY_M_S2 * this.engine.ispVacuum_s;
    let ratio = from.start.mass_kg / s.mass_kg;
    let dry_kg = from.start.mass_kg - from.start.stagePropellant_kg;
    // What is thrown off on the way is not propellant.
    for (const e of events) {
      if (e.name !== 'jettison' || e.time_s > s.time_s) continue;
      const mass_kg = this.script.rocket.jettisons.find((j) => j.name === e.subject)?.mass_kg ?? 0;
      const before_kg = e.state[place.mass]!;
      ratio *= (before_kg - mass_kg) / before_kg;
      dry_kg -= mass_kg;
    }
    const spent_m_s = from.spent_m_s + exhaust * Math.log(ratio);
    const state = {
      radius_m: s.radius_m,
      radialSpeed_m_s: s.verticalSpeed_m_s,
      tangentialSpeed_m_s: s.inertialHorizontalSpeed_m_s,
    };
    const toGo_m_s = deltaVToGo(this.problem, state).deltaV_m_s;
    return {
      total_m_s: spent_m_s + toGo_m_s,
      spent_m_s,
      toGo_m_s,
      left_m_s: exhaust * Math.log(s.mass_kg / Math.min(dry_kg, s.mass_kg)),
      time_s: s.time_s,
      mass_kg: s.mass_kg,
      ...state,
    };
  }
}

/** Steering that was found. */
export interface Steered {
  readonly tangent: number;
  readonly endTangent: number;
  /** Speed left missing at the target's apoapsis for a second burn there, m/s; null = one burn. */
  readonly missing_m_s: number | null;
}
