import type { Figure } from './figure.ts';

export interface BudgetFigures {
  readonly deltaVSpent: Figure;
  readonly deltaVToGo: Figure;
  readonly deltaVRemaining: Figure;
  readonly vehicleDeltaV: Figure;
  readonly projectedTotal: Figure;
  readonly margin: Figure;
  readonly shortfall: Figure;
}

/** Curves of METHODS §5 on their own (adaptive) time grid, s from lift-off and m/s; null = not available there. */
export interface BudgetCurves {
  readonly time_s: readonly number[];
  readonly spent: readonly (number | null)[];
  readonly toGo: readonly (number | null)[];
  readonly projectedTotal: readonly (number | null)[];
  readonly margin: readonly (number | null)[];
}

/** The 95 % interval along a curve, on its own time grid; null where the curve has no value, empty without one. */
export interface CurveBand {
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
}

/** The 95 % intervals along the budget's curves, m/s. */
export interface BudgetBand {
  readonly toGo: CurveBand;
  readonly projectedTotal: CurveBand;
  readonly margin: CurveBand;
}
