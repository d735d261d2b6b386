import { ArcGrid } from './arcGrid.ts';
import { localMinimum } from './localMinimum.ts';
import { OneImpulse } from './oneImpulse.ts';
import { ThreeImpulse } from './threeImpulse.ts';
import { TwoImpulse } from './twoImpulse.ts';
import type { Candidates, WayFamily } from './wayFamily.ts';

/** A target orbit with its world, as the search takes it. */
export interface OrbitGoal {
  readonly mu_m3_s2: number;
  readonly floorRadius_m: number;
  readonly apoapsisRadius_m: number;
  readonly periapsisRadius_m: number;
}

/** A way to the target: a point of a family, its cost in circular speeds, the number of parts the arc had. */
export interface FoundWay {
  readonly family: WayFamily;
  readonly x: Float64Array;
  readonly cost: number;
  readonly parts: number;
}

const ARC_POINTS = 14;
/** So many candidates of each list are refined at most. */
const REFINED = 3;
/** A candidate is given up that starts dearer than the best way by this part of it and this many circular speeds. */
const HOPELESS = 0.08;
const HOPELESS_STEP = 0.03;
/** A way with more impulses must be cheaper by this: where one of its impulses vanishes it is the simpler way. */
const CHEAPER = 1e-12;
/** Other ways worth remembering: no dearer than the best by this, told apart by that, so many in all. */
const CONTENDS = 0.004;
const APART = 1e-9;
const MOST_WAYS = 4;

/** Searches the cheapest ways to one target orbit, for one state after another, in memory that it keeps. */
export class WaySearch {
  readonly grid = new ArcGrid();
  /** Circular speed at the present radius, m/s. */
  unit = Number.NaN;
  private readonly goal: OrbitGoal;
  private readonly kinds: readonly { propose(): void; readonly lists: readonly Candidates[] }[];
  private found: FoundWay[] = [];
  private least = Number.POSITIVE_INFINITY;

  constructor(goal: OrbitGoal) {
    this.goal = goal;
    const { grid } = this;
    const apsides = goal.apoapsisRadius_m === goal.periapsisRadius_m ? [0] : [0, 1];
    this.kinds = [
      new OneImpulse(grid),
      ...apsides.map((apsis) => new TwoImpulse(grid, apsis)),
      ...apsides.flatMap((apsis) => [true, false].map((outer) => new ThreeImpulse(grid, apsis, outer))),
    ];
  }

  /** Takes a state. */
  place(radius_m: number, radialSpeed_m_s: number, tangentialSpeed_m_s: number): void {
    const { goal } = this;
    this.unit = Math.sqrt(goal.mu_m3_s2 / radius_m);
    this.grid.place(
      radialSpeed_m_s / this.unit,
      Math.abs(tangentialSpeed_m_s) / this.unit,
      Math.min(1, goal.floorRadius_m / radius_m),
      goal.apoapsisRadius_m / radius_m,
      goal.periapsisRadius_m / radius_m,
    );
  }

  /** The cheapest ways from the state, the best first; none for a state that is not finite. */
  search(): FoundWay[] {
    this.begin();
    this.grid.lay(ARC_POINTS);
    for (const kind of this.kinds) {
      kind.propose();
      for (const list of kind.lists) this.refineBest(list);
    }
    return this.best();
  }

  /** The same from ways of neighbouring states, without a look at any others. */
  refine(ways: readonly { readonly family: WayFamily; readonly x: Float64Array }[]): FoundWay[] {
    this.begin();
    for (const { family, x } of ways) {
      const cost = family.cost(x);
      if (Number.isFinite(cost)) this.descend(family, x.slice(), cost);
    }
    return this.best();
  }

  private begin(): void {
    this.found = [];
    this.least = Number.POSITIVE_INFINITY;
  }

  private refineBest(list: Candidates): void {
    let before = Number.NEGATIVE_INFINITY;
    for (let refined = 0; refined < REFINED; refined++) {
      const at = list.nextAfter(before);
      if (at < 0) return;
      before = list.costOf(at);
      if (before > this.least * (1 + HOPELESS) + HOPELESS_STEP) return;
      this.descend(list.familyOf(at), list.pointOf(at), before);
    }
  }

  private descend(family: WayFamily, x: Float64Array, start: number): void {
    let ways = family;
    let cost = localMinimum(ways.cost, x, start, this.least);
    if (x[0]! <= 0 && ways.mirror !== null) {
      ways = ways.mirror;
      cost = localMinimum(ways.cost, x, cost, this.least);
    }
    if (cost > this.least + CONTENDS) return;
    if (cost < this.least) this.least = cost;
    this.found.push({ family: ways, x: x.slice(), cost, parts: this.grid.parts });
  }

  private best(): FoundWay[] {
    let winner = this.found[0];
    if (winner === undefined) return [];
    for (const way of this.found) if (way.cost < winner.cost - CHEAPER) winner = way;
    const kept = [winner];
    for (const way of this.found.sort((a, b) => a.cost - b.cost)) {
      if (way.cost > winner.cost + CONTENDS || kept.length === MOST_WAYS) break;
      if (kept.every((other) => Math.abs(other.cost - way.cost) > APART)) kept.push(way);
    }
    return kept;
  }
}
