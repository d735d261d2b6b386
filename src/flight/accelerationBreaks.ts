import type { RawBurn } from './burnEdges.ts';
import type { Break } from './localPolynomial.ts';

/** Samples that a coast needs to answer for its own ends. */
const COAST_SAMPLES = 3;

/**
 * The acceleration jumps at burn edges. An edge is answered from the unpowered, smoother side where that has
 * samples enough, else from the powered one.
 * @param t row times from lift-off, s
 */
export function accelerationBreaks(burns: readonly RawBurn[], t: Float64Array): Break[] {
  const breaks: Break[] = [];
  burns.forEach((burn, k) => {
    const before = burn.first - ((burns[k - 1]?.last ?? -1) + 1);
    const after = (burns[k + 1]?.first ?? t.length) - burn.last - 1;
    if (!burn.startsBeforeLog)
      breaks.push({ time_s: burn.start_s, side: before >= COAST_SAMPLES ? 'before' : 'after' });
    if (!burn.endsAfterLog)
      breaks.push({ time_s: burn.end_s, side: after >= COAST_SAMPLES ? 'after' : 'before' });
  });
  // Standing on the pad and rising from it are two motions.
  if (t[0]! < 0) breaks.push({ time_s: 0, side: 'after' });
  return breaks.sort((a, b) => a.time_s - b.time_s);
}
