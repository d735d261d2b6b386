import { columnOf } from '../flight/identify/equation.ts';
import { hatAt } from '../flight/identify/unknowns.ts';
import type { Flight } from '../flight/types.ts';
import type { LossCurves } from './lossCurves.ts';
import { projectionsOf } from './lossCurves.ts';

/** Variances that the identified vehicle's covariance gives the entries, m²/s². */
export interface FitVariances {
  readonly ideal: number;
  readonly backPressure: number;
  readonly steering: number;
  readonly drag: number;
  /** Of ideal − back pressure − steering − drag, in which the errors partly cancel. */
  readonly unexplained: number;
}

const NONE: FitVariances = { ideal: 0, backPressure: 0, steering: 0, drag: 0, unexplained: 0 };

/**
 * Carries the covariance of the identified values into the entries. Every entry is linear in the factors on Isp,
 * exit area and drag nodes, so the first order is exact. Zeros where the card's values stand in the books.
 */
export function fitVariances(flight: Flight, curves: LossCurves): FitVariances {
  const { identified, gaps, time, burns, mass } = flight;
  if (identified === null || !identified.adopted || mass === null) return NONE;
  const { fit } = identified;
  const engines = fit.engines.length;
  const n = fit.factors.length;
  const gradient = {
    ideal: new Float64Array(n),
    backPressure: new Float64Array(n),
    steering: new Float64Array(n),
    drag: new Float64Array(n),
    unexplained: new Float64Array(n),
  };
  const { push, slip } = projectionsOf(flight, curves.frame === null ? 'inertial' : 'ground');
  const segment = new Map<number, number>();
  for (let k = curves.start; k < curves.end; k++) {
    const b = gaps.burn[k]!;
    const moving = k >= flight.liftOffIndex;
    if (b !== -1 && gaps.vacuum[k] !== 0) {
      const burn = burns[b]!;
      let s = segment.get(b) ?? 0;
      const mid = (time[k]! + time[k + 1]!) / 2;
      while (s + 1 < burn.segments.length && burn.segments[s]!.end_s <= mid) s++;
      segment.set(b, s);
      const e = fit.engineOf[b]![s]!;
      const lost = 1 - (push[k]! + push[k + 1]!) / 2;
      if (burn.segments[s]!.isp_s !== null) {
        const c = columnOf.isp(e);
        const perFactor = gaps.vacuum[k]! / Math.max(1e-9, fit.factors[c]!);
        gradient.ideal[c]! += perFactor;
        if (moving && curves.steering !== null) gradient.steering[c]! += perFactor * lost;
        // On the pad what is earned is held down again.
        if (!moving) gradient.unexplained[c]! -= perFactor;
      }
      if (moving) {
        const c = columnOf.area(e, engines);
        const perFactor = gaps.back[k]! / Math.max(1e-9, fit.factors[c]!);
        gradient.backPressure[c]! += perFactor;
        if (curves.steering !== null) gradient.steering[c]! -= perFactor * lost;
      }
    }
    if (moving && fit.drag !== null && curves.drag !== null) {
      const m = (flight.mach[k]! + flight.mach[k + 1]!) / 2;
      const { node, next } = hatAt(fit.drag.mach, m);
      const q = (flight.dynamicPressure[k]! + flight.dynamicPressure[k + 1]!) / 2;
      const area = (fit.drag.reference_m2[k]! + fit.drag.reference_m2[k + 1]!) / 2;
      const step =
        ((q * area) / ((mass[k]! + mass[k + 1]!) / 2)) *
        ((slip[k]! + slip[k + 1]!) / 2) *
        (time[k + 1]! - time[k]!);
      gradient.drag[columnOf.node(node, engines)]! += step * (1 - next);
      if (next > 0) gradient.drag[columnOf.node(node + 1, engines)]! += step * next;
    }
  }
  for (let c = 0; c < n; c++) {
    gradient.unexplained[c]! +=
      gradient.ideal[c]! - gradient.backPressure[c]! - gradient.steering[c]! - gradient.drag[c]!;
  }
  const variance = (g: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += g[i]! * fit.covariance[i * n + j]! * g[j]!;
    return Math.max(0, sum);
  };
  return {
    ideal: variance(gradient.ideal),
    backPressure: variance(gradient.backPressure),
    steering: variance(gradient.steering),
    drag: variance(gradient.drag),
    unexplained: variance(gradient.unexplained),
  };
}
