import type { LossCurves } from './lossCurves.ts';

/** The ledger's entries at one point, m/s; null where an entry cannot be had. */
export interface LedgerTotals {
  readonly ideal: number | null;
  readonly backPressure: number | null;
  readonly steering: number | null;
  readonly drag: number | null;
  readonly gravity: number;
  readonly frame: number | null;
  readonly holdDown: number | null;
  readonly speedGained: number;
  /** ideal − all spent − speed gained; null while any entry is missing. */
  readonly unexplained: number | null;
}

/** Closes the books at axis point `i`, by default the curves' end. */
export function ledgerTotals(curves: LossCurves, i: number = curves.end): LedgerTotals {
  const at = (curve: Float64Array | null): number | null => (curve === null ? null : curve[i]!);
  const ideal = at(curves.ideal);
  const backPressure = at(curves.backPressure);
  const steering = at(curves.steering);
  const drag = at(curves.drag);
  const gravity = curves.gravity[i]!;
  const frame = at(curves.frame);
  const holdDown = at(curves.holdDown);
  const speedGained = curves.speed[i]! - curves.speed[curves.start]!;
  const whole =
    ideal !== null && backPressure !== null && steering !== null && drag !== null && holdDown !== null;
  const unexplained = whole
    ? ideal - backPressure - steering - drag - gravity - (frame ?? 0) - holdDown - speedGained
    : null;
  return { ideal, backPressure, steering, drag, gravity, frame, holdDown, speedGained, unexplained };
}
