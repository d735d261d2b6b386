import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import { type Budget, toGoAt } from '../ledger/budget.ts';
import { figure, sigmaOf, unavailable, widened, withAssumption } from './figure.ts';
import { ispShareFrom, massSigma, obtainableSigma } from './obtainableError.ts';
import { inertialAcross_m_s, laterInCoast, siteReadings } from './orbitFigures.ts';
import { toGoSigma } from './toGoError.ts';
import type { BudgetFigures, Figure, LedgerEntries } from './types.ts';

/** The budget at the ascent's end. */
export function budgetFigures(
  flight: Flight,
  span: AscentSpan,
  budget: Budget,
  ground: LedgerEntries,
): BudgetFigures {
  const toGoValue = budget.toGo?.[budget.atEnd] ?? null;
  const spent =
    ground.ideal.value === null
      ? unavailable(ground.ideal.reason ?? 'the ideal delta-v is not known')
      : ground.ideal;
  const toGoError = toGoSigma(flight, span.end, toGoValue);
  let toGo: Figure;
  if (toGoValue === null) toGo = unavailable('the target asks for no orbit');
  else {
    toGo = figure(toGoValue, toGoError, 'derived');
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
  const leftSigma = obtainableSigma(flight, span.end, left ?? 0);
  const remaining = left === null ? unavailable(whyNoMargin) : figure(left, leftSigma, 'derived');
  const whole =
    budget.vehicleDeltaV === null
      ? unavailable(whyNoMargin)
      : figure(
          budget.vehicleDeltaV,
          Math.hypot(massSigma(flight, span.end), budget.vehicleDeltaV * ispShareFrom(flight, 0)),
          'derived',
        );
  const sum = spent.value === null || toGoValue === null ? null : spent.value + toGoValue;
  const projected =
    sum === null
      ? unavailable(spent.reason ?? toGo.reason ?? 'no delta-v to go')
      : figure(sum, Math.hypot(sigmaOf(spent), toGoError), 'derived');
  const marginValue = left === null || toGoValue === null ? null : left - toGoValue;
  const margin =
    marginValue === null
      ? unavailable(left === null ? whyNoMargin : (toGo.reason ?? ''))
      : figure(marginValue, Math.hypot(leftSigma, toGoError), 'derived');
  const shortfall =
    marginValue === null
      ? unavailable(margin.reason ?? whyNoMargin)
      : marginValue < 0
        ? figure(-marginValue, Math.hypot(leftSigma, toGoError), 'derived')
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

/** Why the margin cannot be had, in a clause. */
function reasonForNoMargin(flight: Flight): string {
  if (flight.mass === null) return 'the log has no mass';
  if (flight.mission.vehicle === null) return 'no card gives the vehicle’s stages';
  return 'the card lacks a dry mass, propellant mass or specific impulse of a stage';
}
