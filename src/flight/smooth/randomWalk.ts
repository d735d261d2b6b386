import type { Step } from './kalman.ts';

/**
 * Quantities whose `order`−1st derivative walks at random, several side by side: order 1 is the local level (Durbin
 * & Koopman 2012, §2.1), order 3 a motion of position, speed and acceleration under white jerk (Bar-Shalom, Li &
 * Kirubarajan 2001, §6.2.3).
 */

/**
 * The step over `dt` seconds, for each quantity Fᵢⱼ = dtʲ⁻ⁱ/(j−i)! and
 * Qᵢⱼ = q·dt^(2p−1−i−j)/((p−1−i)!(p−1−j)!(2p−1−i−j)), counted from 0.
 * @param order at most 3
 * @param density q, the white noise's spectral density, (unit of the highest derivative)²/s
 * @param jump what the highest derivative may have jumped by besides, one sigma
 * @param into a step of the same shape to be written over
 */
export function randomWalkStep(
  order: number,
  quantities: number,
  dt: number,
  density: number,
  jump = 0,
  into?: Step,
): Step {
  const n = order * quantities;
  const step = into ?? { transition: new Float64Array(n * n), process: new Float64Array(n * n) };
  const { transition, process } = step;
  let power = 1;
  for (let k = 0; k < powers.length; k++) {
    powers[k] = power;
    power *= dt;
  }
  for (let at = 0; at < n; at += order) {
    for (let i = 0; i < order; i++) {
      for (let j = 0; j < order; j++) {
        const k = (at + i) * n + at + j;
        if (j >= i) transition[k] = powers[j - i]! / FACTORIAL[j - i]!;
        const e = 2 * order - 1 - i - j;
        process[k] = (density * powers[e]!) / (FACTORIAL[order - 1 - i]! * FACTORIAL[order - 1 - j]! * e);
      }
    }
    process[(at + order - 1) * (n + 1)]! += jump * jump;
  }
  return step;
}

const FACTORIAL = [1, 1, 2];
/** dt⁰ … dt⁵. */
const powers = new Float64Array(6);
