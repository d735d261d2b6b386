import { coasted } from './coasted.ts';
import { PRIMER_DIFFERENCE_M_S, primerVector } from './primer.ts';
import { deltaVToGo, waySearchOf } from './toGo.ts';
import type { PlanarState, ToGoProblem } from './toGoTypes.ts';
import type { WayFamily } from './wayFamily.ts';
import type { FoundWay, WaySearch } from './waySearch.ts';

/** Inertial states in the plane of motion along a time axis that strictly increases; NaN where missing. */
export interface PlanarStates {
  readonly time_s: Float64Array;
  readonly radius_m: Float64Array;
  readonly radialSpeed_m_s: Float64Array;
  readonly tangentialSpeed_m_s: Float64Array;
}

/** How delta-v to go changes at a state: what a small impulse takes off it, per its size, and its own rate. */
export interface ToGoSlopes {
  readonly radial: number;
  readonly tangential: number;
  readonly magnitude: number;
  /** Rate along the ballistic arc, m/s². */
  readonly drift: number;
}

/** Samples farther apart than this tell nothing of the ways between them. */
const NEIGHBOURS_S = 40;
/** A value between two known ones that stands above their straight line by so much, and such a part of their rise, is searched anew. */
const SUSPECT_M_S = 1;
const SUSPECT_SHARE = 0.1;
/** Step of the drift's central difference along the ballistic arc, s. */
const DRIFT_STEP_S = 0.2;
/** Second differences over those steps beyond this, m/s, tell of a kink. */
const KINK_M_S = 1e-3;

/**
 * Delta-v to go at samples of one flight. A sample between two known ones is not searched from nothing: the ways
 * that are cheapest, or nearly so, at its neighbours are followed to it. The full search is made where there are
 * no neighbours within 40 s, where the arc passes the target's radii otherwise than theirs, and where the value
 * followed stands out above theirs.
 */
export class ToGoAlong {
  private readonly problem: ToGoProblem;
  private readonly states: PlanarStates;
  private readonly search: WaySearch | null;
  private readonly values = new Map<number, number>();
  private readonly ways = new Map<number, readonly FoundWay[]>();
  /** Samples with ways, ascending. */
  private readonly known: number[] = [];

  constructor(problem: ToGoProblem, states: PlanarStates) {
    this.problem = problem;
    this.states = states;
    this.search = waySearchOf(problem);
  }

  /** Number of samples looked at. */
  get evaluations(): number {
    return this.values.size;
  }

  /** The samples looked at, ascending. */
  samples(): Int32Array {
    return Int32Array.from(this.values.keys()).sort();
  }

  /** The sample next to `i`, between two others, whose ways are known; `i` itself where there is none. */
  knownNear(i: number, from: number, to: number): number {
    const at = this.placeOf(i);
    const [before, after] = [
      this.known[at - 1] ?? Number.NEGATIVE_INFINITY,
      this.known[at] ?? Number.POSITIVE_INFINITY,
    ];
    const nearest = i - before < after - i ? before : after;
    return nearest > from && nearest < to ? nearest : i;
  }

  /** Delta-v to go at a sample by the full search, m/s; NaN where the state is missing. */
  searchedAt(i: number): number {
    return this.values.get(i) ?? this.fullSearch(i);
  }

  /** Delta-v to go at a sample, m/s; NaN where the state is missing. */
  valueAt(i: number): number {
    const value = this.values.get(i);
    if (value !== undefined) return value;
    return this.search === null ? this.fullSearch(i) : (this.followed(this.search, i) ?? this.fullSearch(i));
  }

  /**
   * Primer vector and drift at a sample (METHODS §5). By the envelope theorem the cheapest way may be held while
   * the state is changed, so no search is needed; at kinks the difference of full searches is taken.
   */
  slopesAt(i: number): ToGoSlopes {
    const { problem } = this;
    const state = this.state(i);
    const here = this.valueAt(i);
    const way = this.ways.get(i)?.[0];
    const h = PRIMER_DIFFERENCE_M_S;
    const { radius_m, radialSpeed_m_s: up } = state;
    const along = Math.abs(state.tangentialSpeed_m_s);
    const changed = (dUp: number, dAlong: number): PlanarState => ({
      radius_m,
      radialSpeed_m_s: up + dUp,
      tangentialSpeed_m_s: along + dAlong,
    });
    const radial = this.difference(way, here, changed(-h, 0), changed(h, 0));
    const tangential = this.difference(way, here, changed(0, -h), changed(0, h));
    const [before, after] = [-DRIFT_STEP_S, DRIFT_STEP_S].map((t) => coasted(problem.mu_m3_s2, state, t));
    const rise = -(this.difference(way, here, before!, after!) ?? this.fullDifference(before!, after!));
    const drift = rise / (2 * DRIFT_STEP_S);
    if (radial === null || tangential === null) return { ...primerVector(problem, state), drift };
    const lambda = { radial: radial / (2 * h), tangential: tangential / (2 * h) };
    return { ...lambda, magnitude: Math.hypot(lambda.radial, lambda.tangential), drift };
  }

  private state(i: number): PlanarState {
    const { states } = this;
    return {
      radius_m: states.radius_m[i]!,
      radialSpeed_m_s: states.radialSpeed_m_s[i]!,
      tangentialSpeed_m_s: states.tangentialSpeed_m_s[i]!,
    };
  }

  private fullSearch(i: number): number {
    const state = this.state(i);
    const usable = state.radius_m > 0 && Number.isFinite(state.radialSpeed_m_s + state.tangentialSpeed_m_s);
    if (!usable || this.search === null) {
      const value = usable ? deltaVToGo(this.problem, state).deltaV_m_s : Number.NaN;
      this.values.set(i, value);
      return value;
    }
    this.search.place(state.radius_m, state.radialSpeed_m_s, state.tangentialSpeed_m_s);
    return this.keep(i, this.search.search(), this.search.unit);
  }

  private keep(i: number, ways: readonly FoundWay[], unit: number): number {
    const value = ways[0] === undefined ? Number.NaN : ways[0].cost * unit;
    this.values.set(i, value);
    if (ways.length === 0) return value;
    this.ways.set(i, ways);
    this.known.splice(this.placeOf(i), 0, i);
    return value;
  }

  /** How many of the known samples come before a sample. */
  private placeOf(i: number): number {
    let low = 0;
    let high = this.known.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.known[middle]! < i) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The value by way of the neighbours' ways; null where it must be searched. */
  private followed(search: WaySearch, i: number): number | null {
    const { time_s } = this.states;
    const at = this.placeOf(i);
    const left = this.known[at - 1];
    const right = this.known[at];
    if (left === undefined || right === undefined) return null;
    const span = time_s[right]! - time_s[left]!;
    if (!(span <= NEIGHBOURS_S)) return null;
    const state = this.state(i);
    if (!(state.radius_m > 0 && Number.isFinite(state.radialSpeed_m_s + state.tangentialSpeed_m_s)))
      return null;
    search.place(state.radius_m, state.radialSpeed_m_s, state.tangentialSpeed_m_s);
    const before = this.ways.get(left)!;
    const after = this.ways.get(right)!;
    const { parts } = search.grid;
    if (before[0]!.parts !== parts || after[0]!.parts !== parts) return null;
    const share = (time_s[i]! - time_s[left]!) / span;
    const ways = search.refine(merged(before, after, share));
    if (ways[0] === undefined) return null;
    const leftValue = this.values.get(left)!;
    const rise = this.values.get(right)! - leftValue;
    const above = ways[0].cost * search.unit - (leftValue + rise * share);
    if (above > SUSPECT_M_S + SUSPECT_SHARE * Math.abs(rise)) return null;
    return this.keep(i, ways, search.unit);
  }

  /** First less second of the way's costs from two states on either side of one; null where a kink lies between. */
  private difference(
    way: FoundWay | undefined,
    middle_m_s: number,
    first: PlanarState,
    second: PlanarState,
  ): number | null {
    if (way === undefined) return null;
    const one = this.costHeld(way, first);
    const other = this.costHeld(way, second);
    const bend = Math.abs(one + other - 2 * middle_m_s);
    return bend <= KINK_M_S ? one - other : null;
  }

  private costHeld(way: FoundWay, state: PlanarState): number {
    const search = this.search!;
    search.place(state.radius_m, state.radialSpeed_m_s, state.tangentialSpeed_m_s);
    return search.grid.parts === way.parts ? way.family.cost(way.x) * search.unit : Number.NaN;
  }

  private fullDifference(first: PlanarState, second: PlanarState): number {
    return deltaVToGo(this.problem, first).deltaV_m_s - deltaVToGo(this.problem, second).deltaV_m_s;
  }
}

/** The ways of two neighbours, those of one family between them once, at a share of the way from one to the other. */
function merged(
  before: readonly FoundWay[],
  after: readonly FoundWay[],
  share: number,
): { readonly family: WayFamily; readonly x: Float64Array }[] {
  const used = new Set<FoundWay>();
  const out = before.map(({ family, x }) => {
    const twin = after.find((way) => way.family === family && way.x.length === x.length && !used.has(way));
    if (twin === undefined) return { family, x };
    used.add(twin);
    return { family, x: x.map((value, k) => value + share * (twin.x[k]! - value)) };
  });
  return [...out, ...after.filter((way) => !used.has(way))];
}
