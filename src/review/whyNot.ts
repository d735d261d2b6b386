import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import type { Budget } from '../ledger/budget.ts';
import { burnLonger } from '../refly/burnLonger.ts';
import type { FlownPlan } from '../refly/flyPlan.ts';
import { type LastReach, lastReach } from '../refly/outOfReach.ts';
import { apsidesOf, type SingleChange, smallestChanges } from '../refly/reach.ts';
import type { ReflownFlight } from '../refly/reflown.ts';
import type { VerdictCode, WhyNot } from './types.ts';
import { decimal, formatKm } from './wording.ts';

/** What a review knows when it asks why a flight is not in orbit. */
export interface WhyNotQuestion {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly budget: Budget;
  readonly verdict: VerdictCode;
  readonly reflown: ReflownFlight | null;
  readonly plan: FlownPlan | null;
}

const missed: readonly VerdictCode[] = [
  'suborbital-out-of-propellant',
  'suborbital-early-cutoff',
  'orbit-decaying',
];

/**
 * Why a flight is not in orbit: from when on it was out of reach, at the latest and by re-flying, what had been
 * wasted by then, and for each kind of change the smallest that would have brought it there.
 * @returns null for flights that are there, and where the flight cannot be flown again
 */
export function whyNot(q: WhyNotQuestion): WhyNot | null {
  const { reflown, budget, verdict, flight } = q;
  if (reflown === null || !missed.includes(verdict) || flight.mission.target.kind !== 'orbit') return null;
  const early = verdict === 'suborbital-early-cutoff' ? burnLonger(reflown) : null;
  const reach = lastReach(reflown, flight);
  const reach_s = reach?.time_s ?? null;
  const changes = (early === null ? smallestChanges(reflown) : [early])
    .concat(turnInTime(reach))
    .sort((a, b) => size(q, a) - size(q, b));
  const latest = budget.lostAt_s;
  // The measure by delta-v is necessary only: re-flying can but date the loss earlier.
  const outOfReach_s = reach_s === null ? null : latest === null ? reach_s : Math.min(reach_s, latest);
  const spent = outOfReach_s === null ? null : curveAt(budget, budget.spent, outOfReach_s);
  return {
    latest_s: latest,
    outOfReach_s,
    spentThen_m_s: spent,
    wastedThen_m_s: spent === null || outOfReach_s === null ? null : wastedAt(q, outOfReach_s, spent),
    changes: changes.map((change) => ({
      kind: change.kind,
      amount: change.amount,
      unit: unitOf[change.kind],
      text: textOf(q, change),
      ...apsidesOf(flight.mission, change.end),
      nineTenthsPeriapsisAltitude_m:
        change.nineTenths === null ? null : apsidesOf(flight.mission, change.nineTenths).periapsisAltitude_m,
    })),
    text: sentence(q, changes[0], outOfReach_s),
  };
}

/** The continuation from the last moment as a change of its own. */
function turnInTime(reach: LastReach | null): SingleChange[] {
  if (reach === null || reach.lead_rad === null || reach.end === null) return [];
  return [
    {
      kind: 'turn-in-time',
      amount: reach.time_s,
      lead_rad: reach.lead_rad,
      end: reach.end,
      nineTenths: null,
    },
  ];
}

const unitOf: Readonly<Record<SingleChange['kind'], 's' | 'kg' | 'share' | null>> = {
  'steer-last-stage': null,
  'pitch-earlier': 's',
  'more-tilt': 'share',
  'less-tilt': 'share',
  'less-payload': 'kg',
  'burn-longer': 's',
  'turn-in-time': 's',
};

/** How large a change is felt, so that unlike ones can be ranked: 10 s, a tenth of the tilt, a twentieth of the payload. */
function size({ reflown }: WhyNotQuestion, { kind, amount }: SingleChange): number {
  if (kind === 'pitch-earlier' || kind === 'burn-longer') return amount / 10;
  if (kind === 'less-payload') return amount / (0.05 * Math.max(1, reflown?.script.rocket.payload_kg ?? 1));
  // Letting the nose down at the last moment takes a heavy hand.
  if (kind === 'turn-in-time') return 3;
  return amount / 0.1;
}

function textOf({ flight, reflown }: WhyNotQuestion, { kind, amount, lead_rad }: SingleChange): string {
  const steered = 'and steer the last stage to the target';
  if (kind === 'steer-last-stage') return 'steer the last stage to the target from where it was lit';
  if (kind === 'pitch-earlier') return `pitch over ${decimal(amount, 1)} s earlier ${steered}`;
  if (kind === 'turn-in-time')
    return `from ${decimal(amount, 0)} s on let the nose down ${decimal(((lead_rad ?? 0) * 180) / Math.PI, 0)}° under the path, follow the path as it turns, ${steered}`;
  if (kind === 'burn-longer') return `burn ${decimal(amount, 1)} s longer`;
  if (kind === 'less-payload') return `carry ${decimal(Math.ceil(amount / 10) * 10, 0)} kg less ${steered}`;
  const share = `${decimal(Math.abs(amount) * 100, 0)} %`;
  const worst = flight.mission.vehicle === null || reflown === null ? '' : ' throughout the first stage';
  return kind === 'more-tilt'
    ? `tilt ${share} farther from the vertical${worst} ${steered}`
    : `tilt ${share} less${worst} ${steered}`;
}

function sentence(q: WhyNotQuestion, change: SingleChange | undefined, outOfReach_s: number | null): string {
  const when =
    outOfReach_s === null
      ? 'Orbit was in reach to the end.'
      : outOfReach_s === 0
        ? 'Flown again, no ascent that was tried reaches orbit.'
        : `Flown again in the best way from there, orbit was still in reach at ${decimal(outOfReach_s, 0)} s and not after.`;
  if (change === undefined) return `${when} No single change that was tried reaches it.`;
  const { apoapsisAltitude_m, periapsisAltitude_m } = apsidesOf(q.flight.mission, change.end);
  return `${when} The smallest single change that reaches it: ${textOf(q, change)} (${formatKm(apoapsisAltitude_m, false)} × ${formatKm(periapsisAltitude_m)}).`;
}

function curveAt(budget: Budget, curve: readonly number[] | null, t: number): number | null {
  if (curve === null) return null;
  const { time_s } = budget;
  const k = time_s.findIndex((x) => x >= t);
  if (k <= 0) return k === 0 ? curve[0]! : (curve.at(-1) ?? null);
  const step = time_s[k]! - time_s[k - 1]!;
  return curve[k - 1]! + (step > 0 ? (t - time_s[k - 1]!) / step : 1) * (curve[k]! - curve[k - 1]!);
}

/** Projected total flown less planned at equal delta-v spent. */
function wastedAt({ budget, plan }: WhyNotQuestion, t: number, spent: number): number | null {
  const toGo = curveAt(budget, budget.toGo, t);
  const other = plan?.budget;
  if (toGo === null || other?.spent == null || other.toGo === null) return null;
  let k = other.spent.findIndex((s) => s >= spent);
  if (k < 0) k = other.atEnd;
  return spent + toGo - (other.spent[k]! + other.toGo[k]!);
}
