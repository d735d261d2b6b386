import { stageName } from '../../flight/events.ts';
import { obtainableDeltaV_m_s } from '../../mission/obtainable.ts';
import { reflyWith } from '../../refly/reflown.ts';
import { withGaps, withThrust } from '../../refly/scriptEdits.ts';
import { decimal } from '../wording.ts';
import {
  type Candidate,
  contributed,
  type Finder,
  marginLost,
  type Occasion,
  reflownSigma_m_s,
} from './types.ts';

/** Shortest gap between two stages that is asked for, s. */
const SHORT_GAP_S = 2;
/** An upper stage pushes well when it can carry its own weight; a little less is no weakness. */
const STRONG = 1;
const WEAK = 0.9;
/** Sinking faster than this under thrust, m/s and as a share of the speed, is falling back; the best ascent sinks too. */
const SINKING_M_S = 15;
const SINKING_SHARE = 0.015;

/** Gaps between stages, weak upper stages, propellant thrown away with a stage. */
export const stagingFindings: Finder = (o) => [...gap(o), ...weak(o), ...dropped(o)];

function gap(o: Occasion): Candidate[] {
  const { flight, reflown } = o;
  if (reflown === null) return [];
  const gaps = flight.burns.flatMap((burn, k) => {
    const next = flight.burns[k + 1];
    return next === undefined || next.stage === burn.stage || next.startIndex > o.span.end
      ? []
      : [{ start_s: burn.end_s, end_s: next.start_s, stage: next.stage }];
  });
  const longest = gaps.sort((a, b) => b.end_s - b.start_s - (a.end_s - a.start_s))[0];
  if (longest === undefined || longest.end_s - longest.start_s <= SHORT_GAP_S + 0.5) return [];
  const planned = contributed(o, 'timing');
  if (planned !== null && longest.end_s - longest.start_s < plannedGap_s(o, longest.stage) + 0.5) return [];
  const shorter = planned === null ? reflyWith(reflown, withGaps(reflown.script, SHORT_GAP_S)) : null;
  const cost = planned ?? (shorter === null ? null : reflown.steered.total_m_s - shorter.total_m_s);
  if (cost === null) return [];
  const length = longest.end_s - longest.start_s;
  return [
    {
      code: 'stage-gap-long',
      start_s: longest.start_s,
      end_s: longest.end_s,
      cost_m_s: cost,
      sigma_m_s: reflownSigma_m_s(o),
      claim: 'timing',
      text: `${decimal(length, 0)} s without thrust before the stage “${stageName(flight, longest.stage)}” was lit.`,
      evidence: `In that time it lost ${decimal(flight.speed[at(o, longest.start_s)]! - flight.speed[at(o, longest.end_s)]!, 0)} m/s of speed; flown again ${planned === null ? `with a gap of ${SHORT_GAP_S} s` : 'with the planned times'} the ascent costs ${decimal(cost, 0)} m/s less.`,
      advice: `Separate as soon as the engine stops and light the next stage ${SHORT_GAP_S} s later.`,
    },
  ];
}

function plannedGap_s({ plan }: Occasion, stage: number): number {
  const burns = plan?.flown.flight.burns ?? [];
  const next = burns.findIndex((b) => b.stage === stage);
  return next < 1 ? 0 : burns[next]!.start_s - burns[next - 1]!.end_s;
}

function at({ flight }: Occasion, time_s: number): number {
  let i = 0;
  while (i < flight.time.length - 1 && flight.time[i]! < time_s) i++;
  return i;
}

function weak(o: Occasion): Candidate[] {
  const { flight, reflown, span, strips } = o;
  const ratio = strips.channels.thrustToWeight?.values;
  const burn = reflown === null ? undefined : flight.burns.find((b) => b.stage === reflown.lastStage);
  if (reflown === null || ratio === undefined || burn === undefined || o.plan !== null) return [];
  const begun = ratio[Math.min(burn.startIndex + 1, ratio.length - 1)]!;
  if (!(begun < WEAK)) return [];
  // Sinking just before insertion is no falling back: only what comes before the last third counts.
  let slowest = 0;
  let slowest_s = burn.start_s;
  const until = burn.start_s + (flight.time[span.end]! - burn.start_s) * 0.67;
  for (let i = burn.startIndex; i <= span.end && flight.time[i]! < until; i++) {
    if (flight.verticalSpeed[i]! < slowest) {
      slowest = flight.verticalSpeed[i]!;
      slowest_s = flight.time[i]!;
    }
  }
  if (slowest > -Math.max(SINKING_M_S, SINKING_SHARE * flight.speed[at(o, slowest_s)]!)) return [];
  const stronger = reflyWith(reflown, withThrust(reflown.script, reflown.lastStage, STRONG / begun));
  if (stronger === null) return [];
  const cost = reflown.steered.total_m_s - stronger.total_m_s;
  return [
    {
      code: 'upper-stage-underpowered',
      start_s: burn.start_s,
      end_s: slowest_s,
      cost_m_s: cost,
      sigma_m_s: reflownSigma_m_s(o),
      claim: 'vehicle',
      text: `The stage “${stageName(flight, burn.stage)}” was too weak when it was lit: thrust-to-weight ${decimal(begun, 2)}, and it fell back.`,
      evidence: `It sank at up to ${decimal(-slowest, 0)} m/s at ${decimal(slowest_s, 0)} s; with thrust equal to its weight the ascent costs ${decimal(cost, 0)} m/s less.`,
      advice:
        'Carry less above the first stage, give the upper stage more thrust, or hand over higher and steeper.',
    },
  ];
}

/** What burning a stage out would have brought beyond the delta-v that was dropped with it, m/s. */
function burntOut({ reflown }: Occasion, stage: number, lost: number): number {
  if (reflown === null) return 0;
  const { script } = reflown;
  const stages = script.stages.map((s) =>
    s.stage === stage ? { ...s, burns: s.burns.map((b) => ({ ...b, left_kg: null })) } : s,
  );
  return (marginLost(reflown.steered, reflyWith(reflown, { ...script, stages })) ?? lost) - lost;
}

/** Propellant that left the vehicle unburnt with a stage lowers what can still be had (METHODS §5). */
function dropped(o: Occasion): Candidate[] {
  const { flight, span } = o;
  const { vehicle, mass } = flight;
  if (vehicle === null || mass === null) return [];
  return flight.drops.flatMap((drop): Candidate[] => {
    if (drop.kind !== 'separation' || drop.index > span.end) return [];
    const stage = flight.stage[drop.index]!;
    const dry = vehicle.stages[stage]?.dryMass_kg ?? null;
    if (dry === null || stage + 1 >= vehicle.stages.length) return [];
    const unburnt = drop.mass_kg - dry;
    if (unburnt <= 0) return [];
    const could = (s: number, mass_kg: number): number | null =>
      obtainableDeltaV_m_s(vehicle, {
        stage: s,
        mass_kg,
        time_s: drop.time_s,
        gone: new Set(),
        dropTimes_s: new Map(),
      });
    const before = could(stage, mass[drop.index]!);
    const after = could(stage + 1, mass[drop.index + 1]!);
    if (before === null || after === null) return [];
    const lost = before - after;
    // What the earlier staging did to the ascent itself: against a plan by its part, else by burning the stage out.
    const onTheWay = Math.max(0, contributed(o, 'timing') ?? burntOut(o, stage, lost));
    return [
      {
        code: 'propellant-dropped',
        start_s: drop.time_s,
        end_s: drop.time_s,
        cost_m_s: lost + onTheWay,
        sigma_m_s: (lost * 2 * flight.noise.mass_kg) / unburnt,
        claim: 'dropped',
        text: `The stage “${stageName(flight, stage)}” was dropped with ${decimal(unburnt, 0)} kg of propellant in it.`,
        evidence: `${decimal(drop.mass_kg, 0)} kg left the vehicle, ${decimal(dry, 0)} kg of it the empty stage.`,
        advice: 'Let a stage burn until its tanks are empty before it is dropped.',
      },
    ];
  });
}
