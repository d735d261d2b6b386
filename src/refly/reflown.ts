import type { Flight } from '../flight/types.ts';
import type { Mission } from '../mission/types.ts';
import type { FlightProgram } from './flightProgram.ts';
import type { FlightScript } from './flightScript.ts';
import { flightScript } from './flightScript.ts';
import { type Insertion, LastStage, type Steered, toGoProblem } from './lastStage.ts';
import { flyToStage, type Handover, type Mix, overUsed, programToStage } from './mixedFlight.ts';

/** A logged flight that can be flown again with changes; up to the last stage as scripted, from there steered anew. */
export interface ReflownFlight {
  readonly mission: Mission;
  readonly script: FlightScript;
  /** Place in the script of the last stage flown, or of the upper part of the only one. */
  readonly last: number;
  /** Place in the rocket of the last stage flown. */
  readonly lastStage: number;
  /** Where the last stage was lit. */
  readonly handover: Handover;
  /** The last stage as it was flown, and cut off where the delta-v to go was least. */
  readonly flown: { readonly end: Insertion; readonly best: Insertion };
  /** The best that the last stage could still have done. */
  readonly steered: Insertion & Steered;
}

/** One script for all groups. */
export function unmixed(script: FlightScript): Mix {
  return { pitch: script, throttle: script, timing: script, vehicle: script };
}

/**
 * Flies a logged flight again from its own controls.
 * @returns null where it cannot be put in a script, or its target is no orbit
 */
export function reflown(flight: Flight): ReflownFlight | null {
  const { mission } = flight;
  const problem = toGoProblem(mission);
  const script = flightScript(flight);
  if (problem === null || script === null || mission.target.kind === 'suborbital') return null;
  const last = script.stages.length - 1;
  if (last < 1) return null;
  const handover = flyToStage(mission, unmixed(script), last);
  if (handover === null) return null;
  const stage = new LastStage(mission, problem, script, last);
  const flown = stage.asScripted(handover, unmixed(script));
  const steered = stage.steerAnew(handover, throttleOf(script, last), guessOf(script, last));
  const lastStage = script.stages[last]!.stage;
  return { mission, script, last, lastStage, handover, flown, steered };
}

/**
 * Flies the flight with a changed script, its last stage steered anew.
 * @param turn leads the nose under the path from a time on (see `Mix`)
 * @param within_m_s how close to the best steering the search has to come
 * @returns null where it comes down before the last stage is lit
 */
export function reflyWith(
  base: ReflownFlight,
  script: FlightScript,
  turn?: NonNullable<Mix['turn']>,
  within_m_s?: number,
): (Insertion & Steered) | null {
  const { mission, last } = base;
  const problem = toGoProblem(mission);
  const mix = turn === undefined ? unmixed(script) : { ...unmixed(script), turn };
  const from = flyToStage(mission, mix, last);
  if (problem === null || from === null) return null;
  return new LastStage(mission, problem, script, last).steerAnew(
    from,
    throttleOf(script, last),
    base.steered,
    within_m_s,
  );
}

/** A whole flight of a script, its last stage steered as said and cut off at the target's energy. */
export function steeredProgram(
  mission: Mission,
  script: FlightScript,
  steering: Steered,
): FlightProgram | null {
  const problem = toGoProblem(mission);
  if (problem === null) return null;
  const last = script.stages.length - 1;
  const lower = programToStage(mission, unmixed(script), last);
  const stage = new LastStage(mission, problem, script, last);
  const burns = stage.steeredBurns(throttleOf(script, last), steering, mission.site.launchAzimuth_rad);
  return { ...lower, steps: [...lower.steps, ...burns] };
}

export function throttleOf(script: FlightScript, last: number): ReturnType<typeof overUsed> {
  return overUsed({ vehicle: script }, script.stages[last]!, 'throttle');
}

/** The steering that a script's last stage was flown with, roughly. */
export function guessOf(script: FlightScript, last: number): Steered {
  const pitch = script.stages[last]!.pitch_rad;
  const tan = (angle: number): number => Math.max(-3, Math.min(3, Math.tan(angle)));
  return { tangent: tan(pitch[0]!), endTangent: tan(pitch.at(-1)!), missing_m_s: null };
}
