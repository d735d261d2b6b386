import type { Burn, Flight } from '../flight/types.ts';

/** Vacuum delta-v of a burn; null where the engine is not known. */
export function spentIn(flight: Flight, burn: Burn): number | null {
  if (!flight.gaps.known) return null;
  let sum = 0;
  for (let i = burn.startIndex; i < burn.endIndex; i++) sum += flight.gaps.vacuum[i]!;
  return sum;
}
