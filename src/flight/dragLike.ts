import type { PathMotion } from './forceBurns.ts';

/** Half width over which the speed's slope is taken, s. */
const HALF_S = 1.5;
/** Times that are compared lie so far apart, s. */
const APART_S = 4;
/** Change of the logarithm of force over dynamic pressure that counts as none. */
const SAME = 0.25;
/** Share of the comparisons that must show none. */
const MOSTLY = 0.6;

/**
 * True where the force against the motion between two times goes with the dynamic pressure, as that of a body or
 * a canopy in the air does; an engine's keeps its own size while the pressure changes under it. A burn that holds
 * the speed in even air can't be told from a canopy by the path alone, and is taken for one.
 */
export function isDragLike(motion: PathMotion, start_s: number, end_s: number): boolean {
  const { t, speed, coasting, dynamicPressure } = motion;
  const ratio = (at_s: number): number => {
    const a = nearest(t, at_s - HALF_S);
    const b = nearest(t, at_s + HALF_S);
    const i = nearest(t, at_s);
    if (!(t[b]! > t[a]!) || !(dynamicPressure[i]! > 1)) return Number.NaN;
    const force = coasting[i]! - (speed[b]! - speed[a]!) / (t[b]! - t[a]!);
    return force > 0 ? Math.log(force / dynamicPressure[i]!) : Number.NaN;
  };
  let same = 0;
  let seen = 0;
  const step = Math.max(0.5, (end_s - start_s) / 2000);
  for (let at = start_s + HALF_S; at + APART_S < end_s - HALF_S; at += step) {
    const change = ratio(at + APART_S) - ratio(at);
    seen++;
    if (Math.abs(change) < SAME) same++;
  }
  return seen >= 3 && same > MOSTLY * seen;
}

function nearest(t: Float64Array, at: number): number {
  let low = 0;
  let high = t.length - 1;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (t[mid]! < at) low = mid + 1;
    else high = mid;
  }
  return low;
}
