import type { Flight } from '../flight/types.ts';
import type { AscentSpan } from '../ledger/ascentEnd.ts';
import type { Budget } from '../ledger/budget.ts';
import { NORMAL_95, sigmaOf } from './figure.ts';
import { obtainableSigma } from './obtainableError.ts';
import { toGoSigmas } from './toGoError.ts';
import type { BudgetBand, BudgetFigures, CurveBand, Figure } from './types.ts';

/**
 * The 95 % interval along the budget's curves; null where there is no delta-v to go. What is obtainable is as sure
 * as the engines yet to burn; what is to go as the state of that moment, worst beside a burn's edge, where the
 * altitude's rate is seen from one side; what is spent grows unsure with what was spent. At the ascent's end, and
 * in the coast after it, the intervals are the budget's own.
 * @param atEnd the budget's own figures at the ascent's end
 */
export function budgetBand(
  flight: Flight,
  span: AscentSpan,
  budget: Budget,
  atEnd: BudgetFigures,
): BudgetBand | null {
  const { toGo, spent, ways, index, obtainable } = budget;
  if (toGo === null || ways === null) return null;
  const before = index.filter((i) => i < span.end);
  const ofToGo = toGoSigmas(flight, before, ways);
  const ofObtainable = before.map((i, k) => obtainableSigma(flight, i, obtainable?.[k] ?? 0));
  const { deltaVSpent } = atEnd;
  const share = deltaVSpent.value ? sigmaOf(deltaVSpent) / deltaVSpent.value : 0;
  const total = spent === null || deltaVSpent.value === null ? null : toGo.map((c, k) => c + spent[k]!);
  return {
    toGo: band(toGo, ofToGo, atEnd.deltaVToGo),
    projectedTotal: band(
      total,
      ofToGo.map((s, k) => Math.hypot(s, share * (spent?.[k] ?? 0))),
      atEnd.projectedTotal,
    ),
    margin: band(
      budget.margin,
      ofToGo.map((s, k) => Math.hypot(s, ofObtainable[k]!)),
      atEnd.margin,
    ),
  };
}

/** A curve's interval: by the errors as far as they reach, then as far from the curve as the told figure's. */
function band(values: readonly number[] | null, sigmas: readonly number[], told: Figure): CurveBand {
  const edge = (side: -1 | 1): (number | null)[] =>
    (values ?? []).map((v, k) => {
      const sigma = sigmas[k];
      const end = side === -1 ? told.low : told.high;
      const off = sigma !== undefined ? side * NORMAL_95 * sigma : (end ?? 0) - (told.value ?? 0);
      return Number.isFinite(v + off) ? v + off : null;
    });
  return { low: edge(-1), high: edge(1) };
}
