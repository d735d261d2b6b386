import { stateSigma } from '../flight/stateSigma.ts';
import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import { type Budget, toGoAt } from '../ledger/budget.ts';
import { figure, unavailable, widened, withAssumption } from './figure.ts';
import { inertialAcross_m_s, laterInCoast, siteReadings } from './orbitFigures.ts';
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
  const toGoSigma = Math.hypot(state.speed_m_s, state.verticalSpeed_m_s * 0.5, state.altitude_m * perMetre);
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
  const remaining = left === null ? unavailable(whyNoMargin) : figure(left, massSigma, 'derived');
  const whole =
    budget.vehicleDeltaV === null
      ? unavailable(whyNoMargin)
      : figure(budget.vehicleDeltaV, massSigma, 'derived');
  const sum = spent.value === null || toGoValue === null ? null : spent.value + toGoValue;
  const projected =
    sum === null
      ? unavailable(spent.reason ?? toGo.reason ?? 'no delta-v to go')
      : figure(sum, Math.hypot(half(spent), toGoSigma), 'derived');
  const marginValue = left === null || toGoValue === null ? null : left - toGoValue;
  const margin =
    marginValue === null
      ? unavailable(left === null ? whyNoMargin : (toGo.reason ?? ''))
      : figure(marginValue, Math.hypot(massSigma, toGoSigma), 'derived');
  const shortfall =
    marginValue === null
      ? unavailable(margin.reason ?? whyNoMargin)
      : marginValue < 0
        ? figure(-marginValue, Math.hypot(massSigma, toGoSigma), 'derived')
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

/** One-sigma from a figure's 95 % interval. */
function half(f: Figure): number {
  return f.low === null || f.high === null ? 0 : (f.high - f.low) / 3.92;
}

/** Why the margin cannot be had, in a clause. */
export function reasonForNoMargin(flight: Flight): string {
  if (flight.mass === null) return 'the log has no mass';
  if (flight.mission.vehicle === null) return 'no card gives the vehicle’s stages';
  return 'the card lacks a dry mass, propellant mass or specific impulse of a stage';
}
