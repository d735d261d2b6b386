/** Ways of one kind, numbered by up to three coordinates between 0 and 1; cost is smooth inside the box. */
export interface WayFamily {
  /** Cost in units of the circular speed, for the state that the grid holds; sets `impulses`. */
  readonly cost: (x: Float64Array) => number;
  /** The impulses of the way last asked for, in their order. */
  readonly impulses: Float64Array;
  /** Universal anomaly of the first impulse on the present arc. */
  readonly chi: (x: Float64Array) => number;
  /** The family that goes on where the first coordinate is 0, or null. */
  mirror: WayFamily | null;
}

/** Two families, with sign 1 and −1, that meet where the first coordinate is 0. */
export function mirrored(
  family: (sign: number) => Omit<WayFamily, 'mirror'>,
): readonly [WayFamily, WayFamily] {
  const rising: WayFamily = { ...family(1), mirror: null };
  const falling: WayFamily = { ...family(-1), mirror: rising };
  rising.mirror = falling;
  return [rising, falling];
}

/** Points of families that are worth refining. Memory is kept from state to state. */
export class Candidates {
  count = 0;
  private readonly families: WayFamily[] = [];
  private readonly points: Float64Array[] = [];
  private readonly sizes: number[] = [];
  private readonly costs: number[] = [];
  private readonly box = [1, 2, 3].map((n) => new Float64Array(n));

  clear(): void {
    this.count = 0;
  }

  /** Proposes a point of so many coordinates. */
  add(family: WayFamily, size: number, first: number, second = 0, third = 0): void {
    const at = this.count++;
    this.points[at] ??= new Float64Array(3);
    const point = this.points[at]!;
    point[0] = first;
    point[1] = second;
    point[2] = third;
    this.families[at] = family;
    this.sizes[at] = size;
    this.costs[at] = family.cost(point);
  }

  /** Place of the cheapest candidate that is dearer than `cost` (and not infinite), or −1. */
  nextAfter(cost: number): number {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let at = 0; at < this.count; at++) {
      const here = this.costs[at]!;
      if (here > cost && here < least) {
        least = here;
        best = at;
      }
    }
    return best;
  }

  costOf(at: number): number {
    return this.costs[at]!;
  }

  familyOf(at: number): WayFamily {
    return this.families[at]!;
  }

  /** Copy of a candidate's point, good until the next call with as many coordinates. */
  pointOf(at: number): Float64Array {
    const x = this.box[this.sizes[at]! - 1]!;
    for (let k = 0; k < x.length; k++) x[k] = this.points[at]![k]!;
    return x;
  }
}

/**
 * Points of a grid of costs that are no dearer than their neighbours along each coordinate. `counts` are the
 * grid's sizes, the last running fastest; `visit` is given the place along each. The first coordinate is the
 * place on the arc: on its first plane, an impulse now, neighbours count within the plane only, so that the
 * best ways of burning now are always among the points.
 */
export function gridMinima(
  costs: Float64Array,
  ni: number,
  nj: number,
  nk: number,
  visit: (i: number, j: number, k: number) => void,
): void {
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
        visit(i, j, k);
      }
    }
  }
}
