import { localMinimum } from './localMinimum.ts';
import type { Way } from './toGoTypes.ts';

/** Ways of one kind, numbered by up to three coordinates between 0 and 1; cost is smooth inside the box. */
export interface WayFamily {
  readonly cost: (x: Float64Array) => number;
  /** The way in full. */
  readonly way: (x: Float64Array) => Way;
  /** The family that goes on where the first coordinate is 0, or null. */
  mirror: WayFamily | null;
}

/** A point of a family worth refining. */
export interface Candidate {
  readonly family: WayFamily;
  readonly x: Float64Array;
  readonly cost: number;
}

/** So many candidates of each list are refined at most. */
const REFINED = 3;
/** A candidate is given up that starts dearer than the best way by this part of it and this many circular speeds. */
const HOPELESS = 0.08;
const HOPELESS_STEP = 0.03;

/** Two families, with sign 1 and −1, that meet where the first coordinate is 0. */
export function mirrored(
  family: (sign: number) => Omit<WayFamily, 'mirror'>,
): readonly [WayFamily, WayFamily] {
  const rising: WayFamily = { ...family(1), mirror: null };
  const falling: WayFamily = { ...family(-1), mirror: rising };
  rising.mirror = falling;
  return [rising, falling];
}

/** Refines the cheapest candidates of each list and returns the cheapest way of all; null when there is none. */
export function cheapestWay(lists: readonly Candidate[][]): Way | null {
  let best = Number.POSITIVE_INFINITY;
  let winner: Way | null = null;
  for (const list of lists) {
    list.sort((a, b) => a.cost - b.cost);
    let refined = 0;
    let before = Number.NaN;
    for (const { family, x, cost } of list) {
      if (refined === REFINED || cost > best * (1 + HOPELESS) + HOPELESS_STEP) break;
      // The same point proposed twice.
      if (cost === before || cost === Number.POSITIVE_INFINITY) continue;
      before = cost;
      refined++;
      let ways = family;
      let value = localMinimum(ways.cost, x, cost);
      if (x[0]! <= 0 && ways.mirror !== null) {
        ways = ways.mirror;
        value = localMinimum(ways.cost, x, value);
      }
      if (value < best) {
        best = value;
        winner = ways.way(x);
      }
    }
  }
  return winner;
}

/**
 * Points of a grid of costs that are no dearer than their neighbours along each coordinate. `counts` are the
 * grid's sizes, the last running fastest; `visit` is given the place along each. The first coordinate is the
 * place on the arc: on its first plane, an impulse now, neighbours count within the plane only, so that the
 * best ways of burning now are always among the points.
 */
export function gridMinima(
  costs: Float64Array,
  counts: readonly [number, number, number],
  visit: (i: number, j: number, k: number, cost: number) => void,
): void {
  const [ni, nj, nk] = counts;
  for (let i = 0, at = 0; i < ni; i++) {
    for (let j = 0; j < nj; j++) {
      for (let k = 0; k < nk; k++, at++) {
        const cost = costs[at]!;
        if (cost === Number.POSITIVE_INFINITY) continue;
        if (k > 0 && costs[at - 1]! < cost) continue;
        // Of equals the last, which is the level conic where none can fall.
        if (k < nk - 1 && costs[at + 1]! <= cost) continue;
        if (j > 0 && costs[at - nk]! < cost) continue;
        if (j < nj - 1 && costs[at + nk]! < cost) continue;
        if (i > 0 && costs[at - nk * nj]! < cost) continue;
        if (i > 0 && i < ni - 1 && costs[at + nk * nj]! < cost) continue;
        visit(i, j, k, cost);
      }
    }
  }
}
