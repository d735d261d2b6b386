import { type BurnEquation, columnOf } from './equation.ts';

/** Variance of the rise of a straight line fitted by least squares to a random walk, in the walk's own: ∫∫ 9ts·min(t, s). */
const LINE_THROUGH_WALK = 6 / 5;

/**
 * Variances of the factors from the pitch's noise: it adds up to a random walk of cos α along a burn, and a fitted Isp
 * follows that as a straight line does. Zero for all but the Isp.
 * @param engines how many
 * @param count factors in all
 */
export function misledBy(equations: readonly BurnEquation[], engines: number, count: number): Float64Array {
  const out = new Float64Array(count);
  for (let e = 0; e < engines; e++) {
    const sum = (part: 'earned' | 'misled') => equations.reduce((total, eq) => total + eq[part][e]!, 0);
    const earned = sum('earned');
    if (earned > 0) out[columnOf.isp(e)] = (LINE_THROUGH_WALK * sum('misled')) / earned ** 2;
  }
  return out;
}
