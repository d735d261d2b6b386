import type { Flight } from '../flight/types.ts';
import { ispAt_s, propellantWorth_kg, type Waste, type wasteCauses } from '../ledger/waste.ts';
import { figure, unavailable } from './figure.ts';
import type { ReviewWaste } from './types.ts';

/** The split of the projected total as curves and figures. */
export function wasteFigures(flight: Flight, waste: Waste | null): ReviewWaste | null {
  if (waste === null) return null;
  const { time_s, cumulative, total, remainder, amounts, totalAmount } = waste;
  const perSecond = (curve: readonly number[]): number[] =>
    curve.map((value, k) => {
      const dt = k === 0 ? 0 : time_s[k]! - time_s[k - 1]!;
      return dt > 1e-5 ? (value - curve[k - 1]!) / dt : 0;
    });
  const left = Math.abs(remainder.at(-1) ?? 0);
  // The end state's noise is in the total; which cause it falls to is not known, nor what quadrature left over.
  const sigma = Math.hypot(flight.noise.speed_m_s / 2.4, left / 2);
  const end = waste.index.at(-1) ?? 0;
  const kgSigma = propellantWorth_kg(sigma, flight.mass?.[end] ?? Number.NaN, ispAt_s(flight, end));
  const kg = (value: number | null) =>
    value === null ? unavailable('the engine is not known') : figure(value, kgSigma, 'derived');
  const entry = (cause: (typeof wasteCauses)[number]) => ({
    deltaV_m_s: figure(amounts[cause].deltaV_m_s, sigma, 'derived'),
    propellant_kg: kg(amounts[cause].propellant_kg),
  });
  const rates = {
    backPressure: perSecond(cumulative.backPressure),
    drag: perSecond(cumulative.drag),
    offDirection: perSecond(cumulative.offDirection),
    offTime: perSecond(cumulative.offTime),
    drift: perSecond(cumulative.drift),
    total: perSecond(total),
  };
  return {
    curves: { time_s, ...cumulative, total, remainder },
    rates,
    totals: {
      backPressure: entry('backPressure'),
      drag: entry('drag'),
      offDirection: entry('offDirection'),
      offTime: entry('offTime'),
      drift: entry('drift'),
      total: {
        deltaV_m_s: figure(totalAmount.deltaV_m_s, sigma, 'derived'),
        propellant_kg: kg(totalAmount.propellant_kg),
      },
      remainder: {
        deltaV_m_s: figure(remainder.at(-1) ?? 0, 0, 'derived'),
        propellant_kg: unavailable('it has no mass of its own'),
      },
    },
  };
}
