import { ispShare } from '../flight/identify/adopt.ts';
import { stateSigma } from '../flight/stateSigma.ts';
import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import { type Budget, toGoAt } from '../ledger/budget.ts';
import { figure, unavailable, widened, withAssumption } from './figure.ts';
import { inertialAcross_m_s, laterInCoast, roundingHalves, siteReadings } from './orbitFigures.ts';
import type { BudgetFigures, Figure, LedgerEntries } from './types.ts';

/** The budget at the ascent's end. */
export function budgetFigures(
  flight: Flight,
  span: AscentSpan,
  budget: Budget,
  ground: LedgerEntries,
): BudgetFigures {
  const { noise, mission } = flight;
  const toGoValue = budget.toGo?.[budget.atEnd] ?? null;
  const spent =
    ground.ideal.value === null
      ? unavailable(ground.ideal.reason ?? 'the ideal delta-v is not known')
      : ground.ideal;
  // Delta-v to go moves about one for one with the speed, and with the altitude as the orbit's speed does.
  const perMetre =
    mission.world.mu_m3_s2 /
    (2 * flight.radius[span.end]! ** 2 * Math.max(1, flight.track.inertialSpeed[span.end]!));
  const state = stateSigma(flight, span.end);
  const perRate = rateEffect(flight, span.end, toGoValue, state.verticalSpeed_m_s);
  const toGoSigma = Math.hypot(state.speed_m_s, perRate, state.altitude_m * perMetre);
  let toGo: Figure;
  if (toGoValue === null) toGo = unavailable('the target asks for no orbit');
  else {
    toGo = figure(toGoValue, toGoSigma, 'derived');
    if (flight.otherTrack !== null) {
      const other = toGoAt({ ...flight, track: flight.otherTrack }, span.end);
      if (other !== null) toGo = widened(toGo, other);
    }
    const late = laterInCoast(flight, span.end);
    // A coast spends nothing: what it seems to change is the log's error, until the arc comes to its end.
    const lateValue = late === null ? null : toGoAt(flight, late);
    if (lateValue !== null && Math.abs(lateValue - toGoValue) < 50) toGo = widened(toGo, lateValue);
    for (const site of siteReadings(flight, span.end)) {
      const other = toGoAt(flight, span.end, inertialAcross_m_s(flight, span.end, site));
      if (other !== null) toGo = withAssumption(toGo, site.what, other);
    }
  }
  const left = budget.obtainable?.[budget.atEnd] ?? null;
  const whyNoMargin = reasonForNoMargin(flight);
  const massSigma = flight.mass === null ? 0 : (3000 * noise.mass_kg) / flight.mass[span.end]!;
  const share = (stage: number): number => ispShare(flight.identified, stage);
  const here = flight.stage[span.end]!;
  const stages = flight.mission.vehicle?.stages ?? [];
  const later = Math.max(share(here), ...stages.slice(here).map((_, k) => share(here + k)));
  const leftSigma = Math.hypot(massSigma, (left ?? 0) * later);
  const remaining = left === null ? unavailable(whyNoMargin) : figure(left, leftSigma, 'derived');
  const whole =
    budget.vehicleDeltaV === null
      ? unavailable(whyNoMargin)
      : figure(
          budget.vehicleDeltaV,
          Math.hypot(massSigma, budget.vehicleDeltaV * Math.max(0, ...stages.map((_, k) => share(k)))),
          'derived',
        );
  const sum = spent.value === null || toGoValue === null ? null : spent.value + toGoValue;
  const projected =
    sum === null
      ? unavailable(spent.reason ?? toGo.reason ?? 'no delta-v to go')
      : figure(sum, Math.hypot(half(spent), toGoSigma), 'derived');
  const marginValue = left === null || toGoValue === null ? null : left - toGoValue;
  const margin =
    marginValue === null
      ? unavailable(left === null ? whyNoMargin : (toGo.reason ?? ''))
      : figure(marginValue, Math.hypot(leftSigma, toGoSigma), 'derived');
  const shortfall =
    marginValue === null
      ? unavailable(margin.reason ?? whyNoMargin)
      : marginValue < 0
        ? figure(-marginValue, Math.hypot(leftSigma, toGoSigma), 'derived')
        : { value: 0, low: 0, high: 0, basis: 'derived' as const };
  return {
    deltaVSpent: spent,
    deltaVToGo: toGo,
    deltaVRemaining: remaining,
    vehicleDeltaV: whole,
    projectedTotal: projected,
    margin,
    shortfall,
  };
}

/**
 * What the vertical speed's error does to the delta-v to go at axis point `i`, m/s, one sigma: the larger of both
 * ways. Rounding that leaves the rate open over a box counts as the sigma of that reach.
 */
function rateEffect(flight: Flight, i: number, toGo: number | null, sigma_m_s: number): number {
  if (toGo === null) return 0;
  const reach = Math.max(sigma_m_s, roundingHalves(flight, i).rate_m_s / 1.959964);
  const across = flight.track.inertialHorizontalSpeed[i]!;
  let most = 0;
  for (const step of [reach, -reach]) {
    const verticalSpeed = Float64Array.from(flight.verticalSpeed);
    verticalSpeed[i] = verticalSpeed[i]! + step;
    const moved = toGoAt({ ...flight, verticalSpeed }, i, across);
    if (moved !== null && Number.isFinite(moved)) most = Math.max(most, Math.abs(moved - toGo));
  }
  return most;
}

/** One-sigma from a figure's 95 % interval. */
function half(f: Figure): number {
  return f.low === null || f.high === null ? 0 : (f.high - f.low) / 3.92;
}

/** Why the margin cannot be had, in a clause. */
function reasonForNoMargin(flight: Flight): string {
  if (flight.mass === null) return 'the log has no mass';
  if (flight.mission.vehicle === null) return 'no card gives the vehicle’s stages';
  return 'the card lacks a dry mass, propellant mass or specific impulse of a stage';
}
