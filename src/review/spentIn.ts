import type { Burn, Flight } from '../flight/types.ts';
import { burnSigma_m_s } from '../ledger/burnError.ts';
import { figure, unavailable } from './figure.ts';
import type { Figure } from './types.ts';

/** Vacuum delta-v of a burn; null where the engine is not known. */
export function spentIn(flight: Flight, burn: Burn): number | null {
  if (!flight.gaps.known) return null;
  let sum = 0;
  for (let i = burn.startIndex; i < burn.endIndex; i++) sum += flight.gaps.vacuum[i]!;
  return sum;
}

/** The same as a figure, with the interval of the masses and of the engine that it hangs on. */
export function spentFigure(flight: Flight, burn: Burn): Figure {
  const spent = spentIn(flight, burn);
  if (spent === null) return unavailable('the engine is not known');
  const basis = flight.identified?.adopted === true ? 'identified' : 'derived';
  return figure(spent, burnSigma_m_s(flight, burn, spent), basis);
}
