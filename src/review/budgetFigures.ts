import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import { type Budget, toGoAt, toGoByLater } from '../ledger/budget.ts';
import { combined, figure, figureBetween, unavailable, widened, withAssumption } from './figure.ts';
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
    // What a later state of the coast tells otherwise is the log's error, unless it is no coast any more.
    const lateValue = late === null ? null : toGoByLater(flight, span.end, late);
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
  const margin = combined(remaining, toGo, -1);
  return {
    deltaVSpent: spent,
    deltaVToGo: toGo,
    deltaVRemaining: remaining,
    vehicleDeltaV: whole,
    projectedTotal: combined(spent, toGo, 1),
    margin,
    shortfall: shortfallOf(margin),
  };
}

/** How far the margin is under zero; nothing where it is not, as far up as its interval and its assumptions go under. */
function shortfallOf(margin: Figure): Figure {
  if (margin.value === null) return margin;
  const of = (value: number): number => (margin.value! < 0 ? -value : Math.max(0, -value));
  let f = figureBetween(of(margin.value), of(margin.high!), of(margin.low!), 'derived');
  for (const { what, low, high } of margin.assumptions ?? [])
    for (const end of [low, high]) if (of(end) !== f.value) f = withAssumption(f, what, of(end));
  return f;
}

/** Why the margin cannot be had, in a clause. */
function reasonForNoMargin(flight: Flight): string {
  if (flight.mass === null) return 'the log has no mass';
  if (flight.mission.vehicle === null) return 'no card gives the vehicle’s stages';
  return 'the card lacks a dry mass, propellant mass or specific impulse of a stage';
}
