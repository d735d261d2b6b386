import { orbitAt } from '../../ledger/ascentEnd.ts';
import { scriptedPropellant_kg } from '../../refly/flightScript.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import { decimal } from '../wording.ts';
import {
  contributed,
  type Finder,
  type FindingCode,
  type Occasion,
  reachedTarget,
  reflownSigma_m_s,
  shortOfPropellant,
  steeredPastCutoff,
} from './types.ts';

const DEG = 180 / Math.PI;
/** Share of all that was spent from which a last stage's steering is dear. */
const DEAR_SHARE = 0.005;

/** How the last stage was steered, against the plan or against the best that it could still have done. */
export const lastStageFindings: Finder = (o) => {
  const { reflown, flight, span } = o;
  if (reflown === null) return [];
  const planned = contributed(o, 'last-stage-pitch');
  const past = pastApoapsis(o);
  const cost =
    planned === null
      ? reflown.flown.best.total_m_s - reflown.steered.total_m_s
      : planned + (steeredPastCutoff(o) ? (contributed(o, 'cutoff') ?? 0) : 0);
  // Without a plan and with propellant to spare, only what is dear is told: no pilot steers to the last metre.
  if (planned === null && !shortOfPropellant(o)) {
    const missed = past !== null || !reachedTarget(o);
    if (!missed || cost < DEAR_SHARE * reflown.flown.end.spent_m_s) return [];
  }
  const start_s = reflown.handover.start.time_s;
  const end_s = flight.time[span.end]!;
  const away = meanAway(o);
  const up = pitchingUp(o);
  const code: FindingCode =
    past !== null
      ? 'burn-past-apoapsis'
      : up !== null
        ? 'pitch-up-at-apoapsis'
        : away > 0
          ? 'last-stage-too-steep'
          : 'last-stage-too-flat';
  const against = planned === null ? 'steered in the best way from there' : 'steered as planned';
  const shared = {
    code,
    end_s,
    cost_m_s: cost,
    sigma_m_s: reflownSigma_m_s(o),
    claim: 'last-stage',
  } as const;
  if (past !== null)
    return [
      {
        ...shared,
        start_s: past.start_s,
        text: `Burnt for ${decimal(past.length_s, 0)} s while coming down behind the apoapsis.`,
        evidence: `From ${decimal(past.start_s, 0)} s it sank at up to ${decimal(past.sinking_m_s, 0)} m/s under thrust; ${against}, the ascent costs ${decimal(cost, 0)} m/s less.`,
        advice:
          'Reach orbital speed before the apoapsis: light the stage sooner, hand over higher, or keep the nose higher while the vertical speed is small.',
      },
    ];
  if (up !== null)
    return [
      {
        ...shared,
        start_s: up.start_s,
        text: 'Pitched up although the apoapsis was high enough.',
        evidence: `From ${decimal(up.start_s, 0)} s pitch was up to ${decimal(up.most_deg, 0)}° above the best while the apoapsis already stood at ${decimal(up.apoapsis_m / 1000, 0)} km; ${against}, the ascent costs ${decimal(cost, 0)} m/s less.`,
        advice:
          'Once the apoapsis is at its height, thrust along the horizon: only sideways speed is missing.',
      },
    ];
  const steep = away > 0;
  return [
    {
      ...shared,
      start_s,
      text: `The last stage was flown too ${steep ? 'steep' : 'flat'}.`,
      evidence: `Its pitch was ${decimal(Math.abs(away), 0)}° ${steep ? 'above' : 'below'} the better one on the mean; ${against}, the ascent costs ${decimal(cost, 0)} m/s less.`,
      advice: steep
        ? 'Lower the nose after staging as far as the vertical speed allows.'
        : 'Keep the nose higher after staging until the vertical speed is safe, then lower it evenly.',
    },
  ];
};

/** Better pitch of the last stage, degrees, at each axis point of its burn: the plan's, else the best steering's. */
function betterPitch(o: Occasion): (i: number) => number | null {
  const { reflown, flight, plan } = o;
  if (reflown === null) return () => null;
  const start_s = reflown.handover.start.time_s;
  if (plan !== null) {
    const values = plan.strips.channels.pitch_deg?.values;
    const ofStage = (f: Occasion['flight']) => f.burns.find((b) => b.stage === reflown.lastStage);
    const begun = ofStage(plan.flown.flight);
    const lit = ofStage(flight);
    if (values !== undefined && begun !== undefined && lit !== undefined) {
      const t = plan.flown.flight.time;
      let k = begun.startIndex;
      return (i) => {
        const since = flight.time[i]! - lit.start_s;
        while (k < begun.endIndex && t[k]! - begun.start_s < since) k++;
        while (k > begun.startIndex && t[k]! - begun.start_s > since) k--;
        return values[k] ?? null;
      };
    }
  }
  const { tangent, endTangent } = reflown.steered;
  const stage = reflown.script.rocket.stages[reflown.lastStage]!;
  const whole_s =
    (scriptedPropellant_kg(reflown.script, reflown.last) * STANDARD_GRAVITY_M_S2 * stage.ispVacuum_s) /
    stage.thrustVacuum_N;
  return (i) => {
    const share = (flight.time[i]! - start_s) / whole_s;
    return Math.atan(tangent + share * (endTangent - tangent)) * DEG;
  };
}

/** Mean of flown less better pitch over the first two thirds of the last stage, degrees. */
function meanAway(o: Occasion): number {
  const { reflown, flight, span } = o;
  const better = betterPitch(o);
  if (reflown === null || flight.pitch === null) return 0;
  const start_s = reflown.handover.start.time_s;
  const until = start_s + 0.67 * (flight.time[span.end]! - start_s);
  let sum = 0;
  let count = 0;
  for (let i = 0; i <= span.end; i++) {
    if (flight.time[i]! <= start_s || flight.time[i]! > until) continue;
    const wanted = better(i);
    if (wanted === null) continue;
    sum += flight.pitch[i]! * DEG - wanted;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

/** Sinking under thrust for a good part of the last burn. */
function pastApoapsis(o: Occasion): { start_s: number; length_s: number; sinking_m_s: number } | null {
  const { flight, span, plan } = o;
  if (span.burn === null) return null;
  const sinkingTime = (f: Occasion['flight'], from: number, to: number): [number, number, number] => {
    let time = 0;
    let first = Number.NaN;
    let most = 0;
    for (let i = from + 1; i <= to; i++) {
      if (f.verticalSpeed[i]! > -10) continue;
      if (Number.isNaN(first)) first = f.time[i]!;
      time += f.time[i]! - f.time[i - 1]!;
      most = Math.max(most, -f.verticalSpeed[i]!);
    }
    return [time, first, most];
  };
  const [length_s, start_s, sinking_m_s] = sinkingTime(flight, span.burn.startIndex, span.end);
  const whole = flight.time[span.end]! - span.burn.start_s;
  const planBurn = plan?.flown.span.burn ?? null;
  const wanted =
    plan === null || planBurn === null
      ? 0
      : sinkingTime(plan.flown.flight, planBurn.startIndex, plan.flown.span.end)[0];
  if (length_s < 0.15 * whole || length_s < 1.5 * wanted + 5) return null;
  return { start_s, length_s, sinking_m_s };
}

/** Nose well above the better pitch while the apoapsis already had its height. */
function pitchingUp(o: Occasion): { start_s: number; most_deg: number; apoapsis_m: number } | null {
  const { flight, span, reflown } = o;
  const { target, world } = flight.mission;
  if (target.kind !== 'orbit' || flight.pitch === null || reflown === null) return null;
  const better = betterPitch(o);
  let start_s = Number.NaN;
  let most_deg = 0;
  let apoapsis_m = 0;
  let time = 0;
  for (let i = 1; i < span.end; i++) {
    if (flight.time[i]! <= reflown.handover.start.time_s || flight.verticalSpeed[i]! < 0) continue;
    const wanted = better(i);
    const above = wanted === null ? 0 : flight.pitch[i]! * DEG - wanted;
    if (above < 5) continue;
    const height = orbitAt(flight, i).apoapsisRadius_m - world.radius_m;
    if (height < target.apoapsisAltitude_m) continue;
    if (Number.isNaN(start_s)) {
      start_s = flight.time[i]!;
      apoapsis_m = height;
    }
    time += flight.time[i]! - flight.time[i - 1]!;
    most_deg = Math.max(most_deg, above);
  }
  const whole = flight.time[span.end]! - reflown.handover.start.time_s;
  return time > 0.15 * whole ? { start_s, most_deg, apoapsis_m } : null;
}
