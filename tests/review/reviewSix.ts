import { reviewFlight } from '../../src/review/reviewFlight.ts';
import type { Analysis } from '../../src/review/types.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';

/** Reviews a reference flight from six channels and its card. */
export function reviewSix(name: ReferenceName, every = 1): Promise<Analysis> {
  return reviewFlight({
    log: { name: `${name}.csv`, bytes: new TextEncoder().encode(cutLog(name, undefined, every)) },
    card: { name: `${name}.mission.json`, text: readCardText(name) },
  });
}
