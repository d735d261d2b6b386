import { median } from '../log/statistics.ts';
import type { PathMotion } from './forceBurns.ts';

/** Half width over which the speed's slope is taken, s. */
const HALF_S = 1.5;
/** Times that are compared lie at least so far apart, s, and a share of the whole. */
const APART_S = 4;
const APART_SHARE = 0.125;
/** Change of the logarithm of dynamic pressure from which a comparison tells anything. */
const TELLING = 0.3;
/** Share of the comparisons that must tell something, and of those that must speak for drag. */
const SOME = 0.2;
const MOSTLY = 0.6;
/** Drag area over mass from which a steady fall hangs on a canopy, m²/kg. */
const CANOPY_M2_KG = 0.014;
/** A fall is steady while its speed changes by less than this, m/s². */
const STEADY_M_S2 = 1;

/**
 * True where the force against the motion between two times goes with the dynamic pressure, as that of a body or
 * a canopy in the air does; an engine's keeps its own size while the pressure changes under it. Where the pressure
 * hardly changes, a steady fall on a drag area that only canopies have counts too (an engine that holds the speed
 * so can't be told from one by the path alone).
 */
export function isDragLike(motion: PathMotion, start_s: number, end_s: number): boolean {
  const { t, speed, coasting, dynamicPressure } = motion;
  const at = (time_s: number) => {
    const a = nearest(t, time_s - HALF_S);
    const b = nearest(t, time_s + HALF_S);
    const i = nearest(t, time_s);
    const slope = t[b]! > t[a]! ? (speed[b]! - speed[a]!) / (t[b]! - t[a]!) : Number.NaN;
    return { slope, force: coasting[i]! - slope, pressure: dynamicPressure[i]! };
  };
  const apart = Math.max(APART_S, APART_SHARE * (end_s - start_s));
  const step = Math.max(0.5, (end_s - start_s) / 500);
  let seen = 0;
  let telling = 0;
  let forDrag = 0;
  const areas: number[] = [];
  const slopes: number[] = [];
  for (let time = start_s + HALF_S; time + apart < end_s - HALF_S; time += step) {
    const [one, two] = [at(time), at(time + apart)];
    if (!(one.force > 0 && two.force > 0 && one.pressure > 1 && two.pressure > 1)) continue;
    seen++;
    areas.push(two.force / two.pressure);
    slopes.push(Math.abs(two.slope));
    const pressure = Math.log(two.pressure / one.pressure);
    if (Math.abs(pressure) < TELLING) continue;
    telling++;
    // Force as a power of pressure: one for drag, none for an engine.
    if (Math.log(two.force / one.force) / pressure > 0.5) forDrag++;
  }
  if (seen < 3) return false;
  if (telling > SOME * seen && forDrag > MOSTLY * telling) return true;
  return median(areas) > CANOPY_M2_KG && median(slopes) < STEADY_M_S2;
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
