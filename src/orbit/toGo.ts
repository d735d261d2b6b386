import { arcGrid, FARTHEST } from './arcGrid.ts';
import { BallisticArc } from './ballisticArc.ts';
import { impulseToEscape, impulseToPeak } from './impulseNow.ts';
import { oneImpulseWays, scaledTarget } from './oneImpulse.ts';
import { threeImpulseWays } from './threeImpulse.ts';
import type { PlanarState, ToGo, ToGoProblem, Way } from './toGoTypes.ts';
import { twoImpulseWays } from './twoImpulse.ts';
import { cheapestWay } from './wayFamily.ts';

export type { PlanarState, ToGo, ToGoProblem, ToGoTarget } from './toGoTypes.ts';

const ARC_POINTS = 14;
/** Impulses below this speed are none: rounding of a cost that is zero. */
const NO_IMPULSE_M_S = 1e-6;
/** A coast shorter than this is no coast. */
const NOW_S = 0.05;

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
  const { mu_m3_s2, floorRadius_m, target } = problem;
  const unit = Math.sqrt(mu_m3_s2 / state.radius_m);
  const up = state.radialSpeed_m_s / unit;
  const along = Math.abs(state.tangentialSpeed_m_s) / unit;
  const floor = Math.min(1, floorRadius_m / state.radius_m);
  if (target.kind === 'suborbital')
    return oneNow(unit * impulseToPeak(up, along, floor, target.peakRadius_m / state.radius_m));
  if (target.kind === 'escape')
    return oneNow(unit * impulseToEscape(up, along, floor, target.c3_m2_s2 / (unit * unit)));
  const goal = scaledTarget(
    target.apoapsisRadius_m / state.radius_m,
    target.periapsisRadius_m / state.radius_m,
  );
  const radii = goal.apsides.map((apsis) => apsis.radius);
  const farthest = FARTHEST * Math.max(1, ...radii);
  const arc = new BallisticArc(up, along, Math.min(floor, ...radii), farthest);
  const grid = arcGrid(arc, ARC_POINTS, radii);
  const way = cheapestWay([
    oneImpulseWays(grid, goal),
    ...twoImpulseWays(grid, goal),
    ...threeImpulseWays(grid, goal),
  ]);
  if (way === null) return described({ cost: Number.NaN, impulses: [], chi: 0 }, unit, 0);
  return described(way, unit, arc.timeAt(way.chi) * (state.radius_m / unit));
}

function oneNow(deltaV_m_s: number): ToGo {
  return described({ cost: deltaV_m_s, impulses: [deltaV_m_s], chi: 0 }, 1, 0);
}

/** The way in m/s and seconds, impulses that are none left out. */
function described(way: Way, unit: number, coast_s: number): ToGo {
  const impulses_m_s = way.impulses.map((impulse) => impulse * unit).filter((dv) => dv > NO_IMPULSE_M_S);
  const none = impulses_m_s.length === 0;
  return {
    deltaV_m_s: way.cost * unit,
    route: (['none', 'one-impulse', 'two-impulse', 'three-impulse'] as const)[impulses_m_s.length] ?? 'none',
    impulses_m_s,
    coast_s: none ? 0 : coast_s,
    firstImpulseNow: !none && coast_s < NOW_S && (way.impulses[0] ?? 0) * unit > NO_IMPULSE_M_S,
  };
}
