import { findEvents, indexAt, stageName } from '../flight/events.ts';
import type { Flight } from '../flight/types.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import { lossCurves } from '../ledger/lossCurves.ts';
import { straightLines } from '../refly/controls.ts';
import type { FlightScript } from '../refly/flightScript.ts';
import { ascentScript, flyStitched, type PartEnd, type StitchedFlight } from '../refly/stitchedFlight.ts';
import type { StagePart, StitchedStage } from '../refly/stitchedScript.ts';
import { decimal } from '../review/wording.ts';
import { phaseLabel } from './attempt.ts';
import type { Compared } from './stitchGroups.ts';
import type { BestPhase, Stitched, StitchedPhase } from './types.ts';

/** A flight that gives a phase, by the name that the comparison has for it. */
export interface StitchFlight {
  readonly name: string;
  readonly flight: Flight;
}

/** A phase joins where it costs no more than this over what it cost in its own flight, m/s. */
const JOIN_M_S = 10;

/** What a phase is flown from: the flight, its script, and where in the log the phase begins. */
interface Source {
  readonly best: BestPhase;
  readonly flight: Flight;
  readonly script: FlightScript;
  readonly spent: Float64Array;
}

/**
 * Puts the best phases of a group's flights together and flies them: pitch and throttle of each phase against the
 * delta-v spent in it, coasts by their time, the last stage as flown and steered anew to the target (METHODS §7).
 * @param flights those of `stitchNames`
 */
export function stitchedBest(
  comparison: Compared,
  group: string,
  flights: readonly StitchFlight[],
): Stitched {
  const unavailable = (reason: string): Stitched => ({
    kind: 'unavailable',
    group,
    text: `${group}: not stitched, since ${reason}.`,
  });
  const told = comparison.groups.find((g) => g.name === group);
  const world = flights[0]?.flight.mission;
  if (told === undefined || world === undefined) return unavailable('no flight was given');
  const sources = new Map<string, Source>();
  for (const best of told.bestPhases) {
    const flight = flights.find((f) => f.name === best.name)?.flight;
    const script = flight === undefined ? null : ascentScript(flight);
    if (flight === undefined || script === null)
      return unavailable(`${best.name} cannot be flown again from its log and card`);
    const { start, end } = ascentSpan(flight);
    const { ideal } = lossCurves(flight, start, end, 'ground');
    if (ideal === null) return unavailable(`the engine of ${best.name} is not known`);
    sources.set(best.label, { best, flight, script, spent: ideal });
  }
  const plan = stagesOf([...sources.values()][0]!.flight, sources);
  if (plan === null) return unavailable('the best phases make no whole ascent of two stages or more');
  const flown = flyStitched(world, plan.stages);
  if (flown === null)
    return unavailable('flown one after another they come down before the last stage is lit');
  const phases = phasesOf(plan, flown);
  const margin = ({ left_m_s, toGo_m_s }: { left_m_s: number; toGo_m_s: number }) => left_m_s - toGo_m_s;
  const best = comparison.rows
    .filter((r) => r.group === group)
    .reduce<{ name: string; margin_m_s: number } | null>((most, { name, scores }) => {
      const margin_m_s = scores.margin_m_s.value;
      return margin_m_s !== null && (most === null || margin_m_s > most.margin_m_s)
        ? { name, margin_m_s }
        : most;
    }, null);
  const values = {
    asFlown_m_s: margin(flown.asFlown),
    steered_m_s: margin(flown.steered),
    steeredToGo_m_s: flown.steered.toGo_m_s,
    best,
  };
  return { kind: 'flown', group, phases, ...values, text: sentence(group, phases, values) };
}

interface StitchPlan {
  readonly stages: readonly StitchedStage[];
  /** For each stage the phases of its parts; the coast that leads to it. */
  readonly parts: readonly (readonly Source[])[];
  readonly coast: Source | null;
}

/** Which flight flies what. Null where a stage has no phase or there is one stage only. */
function stagesOf(any: Flight, sources: ReadonlyMap<string, Source>): StitchPlan | null {
  const of = (name: string, label: string): Source | undefined => sources.get(phaseLabel(name, label));
  const coast = sources.get('coast') ?? null;
  const parts: Source[][] = [];
  for (let k = 0; k < (any.mission.vehicle?.stages.length ?? 0); k++) {
    const name = stageName(any, k);
    const turn = of('turn', name);
    const rise = of('rise', 'rise');
    const whole = k === 0 ? of('rise', name) : of('powered', name);
    const stage = k === 0 && turn !== undefined && rise !== undefined ? [rise, turn] : [whole ?? turn];
    const known = stage.filter((s): s is Source => s?.script.stages[k] !== undefined);
    if (known.length < stage.length) break;
    parts.push(known);
  }
  if (parts.length < 2) return null;
  const stages = parts.map((sourcesOfStage, k): StitchedStage => {
    const whose = coast?.script.stages[k] === undefined ? sourcesOfStage[0]! : coast;
    return {
      parts: sourcesOfStage.map((s, i) => partOf(s, k, i, sourcesOfStage.length)),
      coast: k === 0 ? null : whose.script,
    };
  });
  return { stages, parts, coast };
}

/** A stage of two parts is cut at its own flight's pitch-over. */
function partOf({ flight, script }: Source, stage: number, part: number, parts: number): StagePart {
  if (parts === 1) return { script, from_kg: 0, to_kg: null };
  const { time_s, used_kg } = script.stages[stage]!;
  const over = straightLines(time_s, used_kg)(pitchOver_s(flight));
  return part === 0 ? { script, from_kg: 0, to_kg: over } : { script, from_kg: over, to_kg: null };
}

function pitchOver_s(flight: Flight): number {
  return findEvents(flight).find((e) => e.name === 'pitch-over')?.time_s ?? 0;
}

function phasesOf({ parts, coast }: StitchPlan, flown: StitchedFlight): StitchedPhase[] {
  const out: StitchedPhase[] = [];
  let coastCost = 0;
  let coastGap: StitchedPhase['gap'] = null;
  let before: PartEnd | null = null;
  let total = flown.start_m_s;
  const put = ({ best }: Source, stitched_m_s: number, gap: StitchedPhase['gap']): void => {
    const { label, name, cost_m_s } = best;
    const joins = stitched_m_s - cost_m_s <= JOIN_M_S;
    out.push({ label, name, own_m_s: cost_m_s, stitched_m_s, gap, joins });
  };
  parts.forEach((sources, k) => {
    const burns = sources[0]!.flight.burns.filter((b) => b.stage === k);
    sources.forEach((source, i) => {
      const from_s =
        i > 0 ? pitchOver_s(source.flight) : (source.flight.burns.find((b) => b.stage === k)?.start_s ?? 0);
      const end = flown.lower[k]?.parts[i];
      const end_m_s = end?.total_m_s ?? flown.asFlown.total_m_s;
      put(source, end_m_s - total, before === null ? null : gapTo(source, from_s, before));
      before = end ?? before;
      total = end_m_s;
    });
    const ignition = flown.lower[k]?.ignition;
    if (ignition === undefined || burns.length === 0) return;
    coastCost += ignition.total_m_s - total;
    const cut = coast?.flight.burns.findLast((b) => b.stage === k)?.end_s;
    if (coast !== null && cut !== undefined && before !== null) coastGap ??= gapTo(coast, cut, before);
    before = ignition;
    total = ignition.total_m_s;
  });
  if (coast !== null) {
    put(coast, coastCost, coastGap);
    // In the order of the flight: the first coast follows the first stage.
    out.splice(parts[0]!.length, 0, out.pop()!);
  }
  return out;
}

/** State taken over less the state in the phase's own flight when it began. */
function gapTo({ flight, spent }: Source, from_s: number, state: PartEnd): StitchedPhase['gap'] {
  const i = indexAt(flight.time, from_s + 1e-6);
  return {
    time_s: state.time_s - from_s,
    altitude_m: state.altitude_m - flight.altitude[i]!,
    speed_m_s: state.speed_m_s - flight.speed[i]!,
    flightPathAngle_deg: ((state.flightPathAngle_rad - flight.flightPathAngle[i]!) * 180) / Math.PI,
    spent_m_s: state.spent_m_s - spent[i]!,
  };
}

function sentence(
  group: string,
  phases: readonly StitchedPhase[],
  {
    asFlown_m_s,
    steered_m_s,
    best,
  }: Pick<Extract<Stitched, { kind: 'flown' }>, 'asFlown_m_s' | 'steered_m_s' | 'best'>,
): string {
  const own = best === null ? '' : ` (own best: ${decimal(best.margin_m_s, 0)} m/s, ${best.name})`;
  const left = `${group}: flown one after another, the best phases leave ${decimal(asFlown_m_s, 0)} m/s of margin${own}; with the last stage steered anew to the target, ${decimal(steered_m_s, 0)} m/s.`;
  const apart = phases.filter((p) => !p.joins);
  if (apart.length === 0)
    return `${left} They join: none costs over ${JOIN_M_S} m/s more than in its own flight.`;
  const where = apart.map(
    (p) =>
      `${p.label} of ${p.name} costs ${decimal(p.stitched_m_s - p.own_m_s, 0)} m/s more than in its own flight`,
  );
  return `${left} They do not join everywhere: ${where.join('; ')}.`;
}
