import type { AscentStart } from '../../src/refly/ascentStarts.ts';
import { type BestAscent, bestAscent, type SearchOptions } from '../../src/refly/bestAscent.ts';
import { type Card, missionOf } from './missions.ts';

/** The best ascent of a reference flight's card, changed or not. */
export function best(name: string, options: SearchOptions = {}, change?: (card: Card) => void): BestAscent {
  const found = bestAscent(missionOf(name, change), options);
  if (found.kind !== 'found') throw new Error(found.kind === 'unavailable' ? found.reason : found.kind);
  return found;
}

/** Twelve unlike ways to begin the search. */
export const starts: AscentStart[] = [
  [4, 1, 10],
  [4, 6, 30],
  [4, 14, 50],
  [8, 2, 5],
  [8, 4, 20],
  [8, 9, 35],
  [8, 20, 60],
  [14, 3, 15],
  [14, 8, 45],
  [14, 16, 25],
  [20, 5, 10],
  [20, 12, 40],
].map(([rise_s = 0, kick_deg = 0, pitch_deg = 0]) => ({ rise_s, kick_deg, pitch_deg }));
