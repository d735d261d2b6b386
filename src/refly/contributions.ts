import type { Flight } from '../flight/types.ts';
import type { Mission } from '../mission/types.ts';
import type { FlightScript } from './flightScript.ts';
import { flightScript, splitOf } from './flightScript.ts';
import { type Insertion, LastStage, toGoProblem } from './lastStage.ts';
import { flyToStage, lastStage, type Mix, overUsed } from './mixedFlight.ts';
import { guessOf, unmixed } from './reflown.ts';
import { differences } from './scriptDifferences.ts';
import { shapley } from './shapley.ts';

/** Groups that are exchanged before the last stage is lit. */
export const lowerGroups = ['pitch', 'throttle', 'timing', 'vehicle'] as const;
export type LowerGroup = (typeof lowerGroups)[number];

/** Contributions to the difference of two projected totals, m/s; they add up to it. */
export interface Contributions {
  readonly parts: readonly {
    readonly group: LowerGroup | 'last-stage-pitch' | 'last-stage-throttle' | 'cutoff' | 'plan' | 'model';
    readonly deltaV_m_s: number;
  }[];
  /** Flown up to the last stage as it was, and from there in the best way, m/s. */
  readonly bestFromHandover: Insertion | null;
}

/**
 * What makes up the difference of the projected totals of a flight and its plan, by re-flying (METHODS §7). Up
 * to the last stage's ignition the groups are exchanged in every order (Shapley), the last stage steered anew to
 * the target each time; what the flown last stage did worse than that, and than the plan's did, is its own, shared
 * between its pitch and its throttle, a late cutoff told apart; what the re-flown flights differ from log and plan
 * is the model's.
 * @param flownTotal_m_s projected total of the log at the end of its ascent
 * @param plannedTotal_m_s the same of the planned flight
 * @param planHolds true where the plan, flown by this rocket, reaches the target: then its last stage is the measure.
 *   Else the measure is the best steering, and what the plan's own last stage loses more than the flown one is told
 *   apart
 * @returns null where a flight cannot be put in a script
 */
export function contributions(
  mission: Mission,
  flown: Flight,
  flownTotal_m_s: number,
  planned: Flight,
  plannedTotal_m_s: number,
  planHolds: boolean,
): Contributions | null {
  const problem = toGoProblem(mission);
  const own = flightScript(flown);
  const other = own === null ? null : flightScript(planned, splitOf(own));
  if (problem === null || own === null || other === null) return null;
  // A rocket that one of the two lit again can be lit again.
  const relit = own.relit || other.relit;
  const was = { ...own, relit };
  const plan = { ...other, relit };
  const last = lastStage(was, plan);
  if (last < 1 || was.stages.length !== plan.stages.length) return null;
  const differ = differences(was, plan, last);
  const groups = lowerGroups.filter((g) => differ.lower.has(g));
  const stageOf = (script: FlightScript): LastStage => new LastStage(mission, problem, script, last);
  const throttleOf = (vehicle: FlightScript, script: FlightScript) =>
    overUsed({ vehicle }, script.stages[last]!, 'throttle');
  const guess = guessOf(plan, last);
  const steered = (mix: Mix, throttle: FlightScript): Insertion | null => {
    const from = flyToStage(mission, mix, last);
    if (from === null) return null;
    return stageOf(mix.vehicle).steerAnew(from, throttleOf(mix.vehicle, throttle), guess);
  };
  let broke = false;
  let whole: Insertion | null = null;
  const mixOf = (set: number): Mix => {
    const pick = (g: LowerGroup): FlightScript => {
      const k = groups.indexOf(g);
      return k >= 0 && set & (1 << k) ? was : k >= 0 ? plan : was;
    };
    return {
      pitch: pick('pitch'),
      throttle: pick('throttle'),
      timing: pick('timing'),
      vehicle: pick('vehicle'),
    };
  };
  const all = (1 << groups.length) - 1;
  let none = Number.NaN;
  const lower = shapley(groups.length, (set) => {
    const end = steered(mixOf(set), plan);
    if (end === null) broke = true;
    const value = end?.total_m_s ?? Number.NaN;
    if (set === 0) none = value;
    if (set === all) whole = end;
    return value;
  });
  const flownMix = unmixed(was);
  const planMix = unmixed(plan);
  const from = flyToStage(mission, flownMix, last);
  const planFrom = flyToStage(mission, planMix, last);
  if (broke || from === null || planFrom === null || whole === null) return null;
  const bestFromHandover: Insertion = whole;
  const stage = stageOf(was);
  const scripted = stage.asScripted(from, flownMix);
  const asPlanned = stageOf(plan).asScripted(planFrom, planMix);
  const upper = shapley(2, (set) => {
    if (set === 0) return bestFromHandover.total_m_s;
    if (set === 3) return scripted.best.total_m_s;
    if (!differ.lastThrottle) return set === 1 ? scripted.best.total_m_s : bestFromHandover.total_m_s;
    if (set === 2) return stage.steerAnew(from, throttleOf(was, was), guess).total_m_s;
    return stage.asScripted(from, { ...flownMix, throttle: plan }).best.total_m_s;
  });
  const parts: { group: Contributions['parts'][number]['group']; deltaV_m_s: number }[] = groups.map(
    (group, k) => ({ group, deltaV_m_s: lower[k]! }),
  );
  const steering = against(upper[0]!, asPlanned.best.total_m_s - none, planHolds);
  const cutoff = against(past(scripted), past(asPlanned), planHolds);
  parts.push({ group: 'last-stage-pitch', deltaV_m_s: steering.flown });
  if (differ.lastThrottle) parts.push({ group: 'last-stage-throttle', deltaV_m_s: upper[1]! });
  parts.push(
    { group: 'cutoff', deltaV_m_s: cutoff.flown },
    ...(planHolds ? [] : [{ group: 'plan', deltaV_m_s: steering.plan + cutoff.plan } as const]),
    {
      group: 'model',
      deltaV_m_s: flownTotal_m_s - scripted.end.total_m_s - (plannedTotal_m_s - asPlanned.end.total_m_s),
    },
  );
  return { parts, bestFromHandover };
}

/** What burning past the best cutoff cost, m/s. */
function past({ end, best }: ReturnType<LastStage['asScripted']>): number {
  return end.total_m_s - best.total_m_s;
}

/**
 * What a flight loses against the best, less what its plan does, m/s. Where the plan is no measure only what both
 * lose alike cancels, so that no difference is told where there is none; the plan's rest is told apart.
 */
function against(
  flown: number,
  plan: number,
  planHolds: boolean,
): { readonly flown: number; readonly plan: number } {
  if (planHolds) return { flown: flown - plan, plan: 0 };
  const alike = flown * plan <= 0 ? 0 : Math.sign(plan) * Math.min(Math.abs(flown), Math.abs(plan));
  return { flown: flown - alike, plan: alike - plan };
}
