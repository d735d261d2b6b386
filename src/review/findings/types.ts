import type { FlightEvent } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import type { AscentSpan } from '../../ledger/ascentEnd.ts';
import type { Budget } from '../../ledger/budget.ts';
import type { LossCurves } from '../../ledger/lossCurves.ts';
import type { Contributions } from '../../refly/contributions.ts';
import type { FlownPlan } from '../../refly/flyPlan.ts';
import type { ReflownFlight } from '../../refly/reflown.ts';
import type { OrbitFigures, Strips, VerdictCode } from '../types.ts';

/** Every kind of finding. */
export type FindingCode =
  | 'pitch-over-late'
  | 'pitch-over-early'
  | 'pitch-over-too-hard'
  | 'too-steep'
  | 'too-flat'
  | 'last-stage-too-steep'
  | 'last-stage-too-flat'
  | 'burn-past-apoapsis'
  | 'pitch-up-at-apoapsis'
  | 'thrust-over-air'
  | 'throttle-down-long'
  | 'angle-of-attack-in-air'
  | 'stage-gap-long'
  | 'upper-stage-underpowered'
  | 'cutoff-early'
  | 'cutoff-late'
  | 'propellant-dropped'
  | 'propellant-left'
  | 'stage-not-lit'
  | 'rotation-not-used'
  | 'plane-error'
  | 'thrust-below-rating'
  | 'isp-below-rating'
  | 'mass-above-card'
  | 'log-ends-in-flight';

/** What a cost is taken out of, so that no metre per second is claimed twice. */
export type Claim =
  | 'pitch'
  | 'last-stage'
  | 'throttle'
  | 'timing'
  | 'vehicle'
  | 'cutoff'
  | 'dropped'
  | 'plane';

/** A finding before it is ranked. */
export interface Candidate {
  readonly code: FindingCode;
  readonly start_s: number;
  readonly end_s: number;
  /** What it cost; null where it cannot be told in m/s (it is then put first). */
  readonly cost_m_s: number | null;
  /** One-sigma error of the cost. */
  readonly sigma_m_s: number;
  readonly claim: Claim;
  readonly text: string;
  readonly evidence: string;
  readonly advice: string;
}

/** What the finders look at. */
export interface Occasion {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly budget: Budget;
  readonly ground: LossCurves;
  readonly events: readonly FlightEvent[];
  readonly strips: Strips;
  readonly orbit: OrbitFigures;
  readonly verdict: VerdictCode;
  /** One-sigma error of the projected total, m/s. */
  readonly sigma_m_s: number;
  /** The flight flown again from its own controls; null where that cannot be done. */
  readonly reflown: ReflownFlight | null;
  readonly plan: { readonly flown: FlownPlan; readonly strips: Strips } | null;
  readonly contributions: Contributions | null;
}

/** One family of findings. */
export type Finder = (o: Occasion) => readonly Candidate[];

/** Verdicts of flights that came where they were to go. */
export function reachedTarget({ verdict }: Occasion): boolean {
  return verdict === 'in-orbit' || verdict === 'escape' || verdict === 'suborbital-as-planned';
}

/** True where the tanks could not have made up for what was missing: only then can a better ascent be the answer. */
export function shortOfPropellant({ budget }: Occasion): boolean {
  const margin = budget.margin?.[budget.atEnd];
  return margin !== undefined && margin < 0;
}

/** A contribution to the difference from the plan, m/s; null without a plan. */
export function contributed(o: Occasion, group: Contributions['parts'][number]['group']): number | null {
  if (o.contributions === null) return null;
  return o.contributions.parts.find((p) => p.group === group)?.deltaV_m_s ?? 0;
}

/** True where a burn past the best cutoff comes of worse steering: then it is told with that. */
export function steeredPastCutoff(o: Occasion): boolean {
  const past = contributed(o, 'cutoff') ?? 0;
  return past > 0 && (contributed(o, 'last-stage-pitch') ?? 0) > past;
}

/** One-sigma error of a cost found by re-flying: half of what the re-flown flight misses the log by. */
export function reflownSigma_m_s(o: Occasion): number {
  const total =
    o.budget.spent === null || o.budget.toGo === null
      ? null
      : o.budget.spent[o.budget.atEnd]! + o.budget.toGo[o.budget.atEnd]!;
  const miss = total === null || o.reflown === null ? 0 : Math.abs(total - o.reflown.flown.end.total_m_s);
  return Math.hypot(miss / 2, o.sigma_m_s / 2, 0.3);
}

interface Ended {
  readonly left_m_s: number;
  readonly toGo_m_s: number;
}

/** How much more margin a changed flight would have had at the end, m/s; null where it comes down. */
export function marginLost(was: Ended, changed: Ended | null): number | null {
  if (changed === null) return null;
  return changed.left_m_s - changed.toGo_m_s - (was.left_m_s - was.toGo_m_s);
}
