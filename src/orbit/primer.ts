import { deltaVToGo } from './toGo.ts';
import type { PlanarState, ToGoProblem } from './toGoTypes.ts';

/** Lawden's primer vector in the plane of motion: what a small impulse takes off the delta-v to go, per its size. */
export interface Primer {
  readonly radial: number;
  readonly tangential: number;
  readonly magnitude: number;
}

/**
 * Half the speed difference. Small against what is left to do wherever that is more than a metre per second, and
 * ten million times the scatter of the search.
 */
export const PRIMER_DIFFERENCE_M_S = 0.05;

/**
 * Primer vector λ = −∂C/∂V of the delta-v to go (METHODS §5; Lawden 1963), by central differences in the radial
 * and the tangential speed. Its size is 1 where it pays to burn at once (λ then points along that impulse), else
 * less. Where two ways cost the same it is the mean of theirs. Dimensionless.
 */
export function primerVector(problem: ToGoProblem, state: PlanarState): Primer {
  const tangentialSpeed_m_s = Math.abs(state.tangentialSpeed_m_s);
  const costAt = (up: number, along: number): number =>
    deltaVToGo(problem, {
      radius_m: state.radius_m,
      radialSpeed_m_s: state.radialSpeed_m_s + up,
      tangentialSpeed_m_s: tangentialSpeed_m_s + along,
    }).deltaV_m_s;
  const h = PRIMER_DIFFERENCE_M_S;
  const radial = (costAt(-h, 0) - costAt(h, 0)) / (2 * h);
  const tangential = (costAt(0, -h) - costAt(0, h)) / (2 * h);
  return { radial, tangential, magnitude: Math.hypot(radial, tangential) };
}
