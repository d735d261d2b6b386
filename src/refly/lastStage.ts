import { toGoTarget } from '../ledger/budget.ts';
import type { Mission } from '../mission/types.ts';
import { deltaVToGo, type ToGoProblem } from '../orbit/toGo.ts';
import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import { Ascent } from './ascent.ts';
import { held, type Program } from './controls.ts';
import type { FlightStep } from './flightProgram.ts';
import type { FlightScript } from './flightScript.ts';
import { burnSteps, type Handover, type Mix } from './mixedFlight.ts';
import { nelderMead } from './nelderMead.ts';
import { SteadyRecorder } from './recorder.ts';
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
    const s = this.script.rocket.stages[this.stage]!;
    return (s.propellantMass_kg * STANDARD_GRAVITY_M_S2 * s.ispVacuum_s) / s.thrustVacuum_N;
  }

  /**
   * The linear-tangent steering (Lawden 1963) from a handover that reaches the target for the least projected
   * total, or comes nearest to it; cut off at the target's energy or when the stage is empty. What is left to go
   * weighs more than what is spent, so that the burn itself ends in the target orbit where it can.
   * @param guess tangents of the pitch at the start and after `burn_s` to try besides the usual ones
   * @param within_m_s how close to the best the search has to come
   */
  steerAnew(
    from: Handover,
    throttle: Program,
    guess?: readonly [number, number],
    within_m_s = 0.02,
  ): Insertion & Steered {
    const fly = (x: readonly number[]): Insertion => this.linearTangent(from, throttle, x[0]!, x[1]!);
    const tries: (readonly number[])[] = guess === undefined ? [] : [guess];
    const bends = guess === undefined ? [-0.35, 0, 0.3] : [0];
    for (const a of [0, 0.35, 0.9, 2]) for (const b of bends) tries.push([a, b]);
    const merit = (x: readonly number[]): number => {
      const end = fly(x);
      return end.total_m_s + TO_GO_WEIGHT * end.toGo_m_s;
    };
    const ranked = tries.map((x) => ({ x, f: merit(x) })).sort((p, q) => p.f - q.f);
    const best = nelderMead(merit, ranked[0]!.x, [0.12, 0.12], within_m_s, within_m_s < 1 ? 120 : 45);
    const [tangent = 0, endTangent = 0] = best.x;
    return { ...fly(best.x), tangent, endTangent };
  }

  /** Flies tan θ led straight from `tangent` at the start to `endTangent` after `burn_s`. */
  linearTangent(from: Handover, throttle: Program, tangent: number, endTangent: number): Insertion {
    return this.fly(from, [this.steeredBurn(throttle, { tangent, endTangent }, from.start.course_rad)]);
  }

  /** The burn of a steering, cut off at the target's energy. */
  steeredBurn(throttle: Program, { tangent, endTangent }: Steered, heading_rad: number): FlightStep {
    const fall = (tangent - endTangent) / this.burn_s;
    const { world, target } = this.mission;
    return {
      do: 'burn',
      controls: {
        throttle,
        pitch: { at: (s) => Math.atan(tangent - fall * s.sinceStep_s) },
        heading: held(heading_rad),
      },
      until: untilTargetEnergy(world, target),
    };
  }

  /** Flies steps from a handover and says how they ended. */
  fly(from: Handover, steps: readonly FlightStep[]): Insertion {
    const controls = { throttle: held(1), pitch: held(0), heading: held(from.start.course_rad) };
    const result = this.ascent.fly({ start: from.start, controls, steps });
    const s = this.ascent.observe(result.time_s, result.state);
    return this.insertion(from, {
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
    this.ascent.fly({ start: from.start, controls, steps }, recorder);
    const c = recorder.columns();
    const n = c.time_s.length;
    const at = (i: number): Insertion =>
      this.insertion(from, {
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

  private insertion(from: Handover, s: Record<(typeof names)[number], number>): Insertion {
    const stage = this.script.rocket.stages[this.stage]!;
    const exhaust = STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s;
    const spent_m_s = from.spent_m_s + exhaust * Math.log(from.start.mass_kg / s.mass_kg);
    const state = {
      radius_m: s.radius_m,
      radialSpeed_m_s: s.verticalSpeed_m_s,
      tangentialSpeed_m_s: s.inertialHorizontalSpeed_m_s,
    };
    const toGo_m_s = deltaVToGo(this.problem, state).deltaV_m_s;
    const dry_kg = from.start.mass_kg - from.start.stagePropellant_kg;
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
}
