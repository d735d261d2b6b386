import type { Flight } from '../flight/types.ts';
import type { Mission } from '../mission/types.ts';
import { deltaVToGo } from '../orbit/toGo.ts';
import { Ascent } from './ascent.ts';
import type { FlightStep, Until } from './flightProgram.ts';
import { type FlightScript, flightScript, splitOf } from './flightScript.ts';
import { type Insertion, LastStage, toGoProblem } from './lastStage.ts';
import { burnSteps, flyToStage, programToStage } from './mixedFlight.ts';
import { place } from './motion.ts';
import { guessOf, throttleOf, unmixed } from './reflown.ts';
import { joins_kg, type StitchedStage, stitchedScript } from './stitchedScript.ts';

/** Where a stitched flight stands at the end of a part. */
export interface PartEnd {
  readonly time_s: number;
  readonly altitude_m: number;
  readonly speed_m_s: number;
  readonly flightPathAngle_rad: number;
  /** Vacuum delta-v spent, and that with what is left to go: the projected total, m/s. */
  readonly spent_m_s: number;
  readonly total_m_s: number;
}

/** A flight put together from parts of others, flown. */
export interface StitchedFlight {
  /** Projected total at lift-off, m/s. */
  readonly start_m_s: number;
  /** For each stage before the last: the ends of its parts, the ignition of the next stage after them. */
  readonly lower: readonly { readonly parts: readonly PartEnd[]; readonly ignition: PartEnd }[];
  /** The last stage flown with the controls of its own flight to that flight's cutoff. */
  readonly asFlown: Insertion;
  /** The last stage steered anew to the target. */
  readonly steered: Insertion;
}

/** A flight's script, whose stages can be put together with another's; null where it has none or a single stage. */
export function ascentScript(flight: Flight): FlightScript | null {
  const script = flightScript(flight);
  return script === null || splitOf(script) !== undefined ? null : script;
}

/**
 * Flies a flight that is put together from parts of others.
 * @param stages two or more, of one rocket
 * @returns null where it comes down before the last stage is lit, or the target has no delta-v to go
 */
export function flyStitched(mission: Mission, stages: readonly StitchedStage[]): StitchedFlight | null {
  const problem = toGoProblem(mission);
  const last = stages.length - 1;
  if (problem === null || last < 1) return null;
  const script = stitchedScript(stages);
  const mix = unmixed(script);
  const handover = flyToStage(mission, mix, last);
  if (handover === null) return null;
  const ascent = new Ascent(mission.world, script.rocket, { relativeTolerance: 1e-8 });
  const after = (stage: number, more: readonly FlightStep[]): PartEnd => {
    const program = programToStage(mission, mix, stage);
    const { time_s, state } = ascent.fly({ ...program, steps: [...program.steps, ...more] });
    const s = ascent.observe(time_s, state);
    const { altitude_m, speed_m_s, flightPathAngle_rad } = s;
    const toGo = deltaVToGo(problem, {
      radius_m: s.radius_m,
      radialSpeed_m_s: s.verticalSpeed_m_s,
      tangentialSpeed_m_s: s.inertialHorizontalSpeed_m_s,
    });
    const spent_m_s = state[place.ideal]!;
    const total_m_s = spent_m_s + toGo.deltaV_m_s;
    return { time_s, altitude_m, speed_m_s, flightPathAngle_rad, spent_m_s, total_m_s };
  };
  const lower = stages.slice(0, last).map(({ parts }, k) => {
    const burns = burnSteps(mix, k, mission);
    const full_kg = script.rocket.stages[k]!.propellantMass_kg;
    const inside = joins_kg(parts).map((used_kg) => {
      const until: Until = {
        kind: 'condition',
        value: (s) => s.stagePropellant_kg - (full_kg - used_kg),
        direction: -1,
      };
      const [first] = burns;
      return after(k, first === undefined || first.do !== 'burn' ? burns : [{ ...first, until }]);
    });
    return { parts: [...inside, after(k, burns)], ignition: after(k + 1, []) };
  });
  // Held down, the engine has spent something before it is let go.
  const letGo = burnSteps(mix, 0, mission)
    .slice(0, 1)
    .map((s) => ({ ...s, until: { kind: 'time' as const, time_s: 0 } }));
  const stage = new LastStage(mission, problem, script, last);
  return {
    start_m_s: after(0, letGo).total_m_s,
    lower,
    asFlown: stage.asScripted(handover, mix).end,
    steered: stage.steerAnew(handover, throttleOf(script, last), guessOf(script, last)),
  };
}
