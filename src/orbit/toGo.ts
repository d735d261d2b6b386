import { impulseToEscape, impulseToPeak } from './impulseNow.ts';
import type { PlanarState, ToGo, ToGoProblem } from './toGoTypes.ts';
import { WaySearch } from './waySearch.ts';

export type { PlanarState, ToGo, ToGoProblem, ToGoTarget } from './toGoTypes.ts';

/** Impulses below this speed are none: rounding of a cost that is zero. */
const NO_IMPULSE_M_S = 1e-6;
/** A coast shorter than this is no coast. */
const NOW_S = 0.05;

/** The search of each problem, whose memory serves its next state too. */
const searches = new WeakMap<ToGoProblem, WaySearch>();

/**
 * Least impulsive delta-v from a state to a target in the state's own plane, in vacuum (METHODS §5, C): for an
 * orbit the cheapest of
 * - two impulses, the first now or later on the present arc, onto a conic that touches the target at one of its
 *   apsides, the second there;
 * - three, the first onto any conic clear of the floor, then the cheapest transfer from one of its apsides to one
 *   of the target's.
 * The target's orientation in the plane is free. No arc and no impulse lies below the floor or, where the vehicle
 * is lower than that, below its present radius (nor is a floor kept that the target itself breaks). For a
 * suborbital target it is the one impulse now that reaches the peak, for escape the one that gives the C3.
 *
 * Continuous in the state but for chances that pass (a radius left behind for good), with kinks where another way
 * becomes the cheapest. Turning points farther than 100 times the present radius and the target are left out, so
 * ways through infinity count with what they cost from there. A state that is not finite gives NaN.
 */
export function deltaVToGo(problem: ToGoProblem, state: PlanarState): ToGo {
  const { target } = problem;
  if (target.kind !== 'orbit') return described([oneImpulseToGo_m_s(problem, state)], 1, 0);
  const search = waySearchOf(problem);
  if (search === null) throw new Error('an orbit target has a search');
  search.place(state.radius_m, state.radialSpeed_m_s, state.tangentialSpeed_m_s);
  const [way] = search.search();
  if (way === undefined) return described([Number.NaN], 1, 0);
  const { arc } = search.grid;
  // The arc and the impulses are those of the last point looked at: set them to the way's.
  way.family.cost(way.x);
  const coast_s = arc.timeAt(way.family.chi(way.x)) * (state.radius_m / search.unit);
  return described(way.family.impulses, search.unit, coast_s);
}

/** The search of ways to the problem's target orbit; null for a target that is reached by one impulse now. */
export function waySearchOf(problem: ToGoProblem): WaySearch | null {
  const { mu_m3_s2, floorRadius_m, target } = problem;
  if (target.kind !== 'orbit') return null;
  let search = searches.get(problem);
  if (search === undefined) {
    const { apoapsisRadius_m, periapsisRadius_m } = target;
    search = new WaySearch({ mu_m3_s2, floorRadius_m, apoapsisRadius_m, periapsisRadius_m });
    searches.set(problem, search);
  }
  return search;
}

/** The one impulse now that a suborbital target or an escape asks for. */
function oneImpulseToGo_m_s({ mu_m3_s2, floorRadius_m, target }: ToGoProblem, state: PlanarState): number {
  const unit = Math.sqrt(mu_m3_s2 / state.radius_m);
  const up = state.radialSpeed_m_s / unit;
  const along = Math.abs(state.tangentialSpeed_m_s) / unit;
  const floor = Math.min(1, floorRadius_m / state.radius_m);
  if (target.kind === 'suborbital')
    return unit * impulseToPeak(up, along, floor, target.peakRadius_m / state.radius_m);
  if (target.kind === 'escape')
    return unit * impulseToEscape(up, along, floor, target.c3_m2_s2 / (unit * unit));
  return Number.NaN;
}

/** The way in m/s and seconds, impulses that are none left out. */
function described(impulses: ArrayLike<number>, unit: number, coast_s: number): ToGo {
  const all = Array.from(impulses, (impulse) => impulse * unit);
  const impulses_m_s = all.filter((dv) => dv > NO_IMPULSE_M_S);
  const none = impulses_m_s.length === 0;
  return {
    deltaV_m_s: all.reduce((sum, dv) => sum + dv, 0),
    route: (['none', 'one-impulse', 'two-impulse', 'three-impulse'] as const)[impulses_m_s.length] ?? 'none',
    impulses_m_s,
    coast_s: none ? 0 : coast_s,
    firstImpulseNow: !none && coast_s < NOW_S && (all[0] ?? 0) > NO_IMPULSE_M_S,
  };
}
