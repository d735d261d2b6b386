import { blockOf, courseOf, lastOfBlock } from './course.ts';
import { FAR, finiteIndex, ROWS_BEHIND, usualRate } from './outliers.ts';

/** A place from which on a column is written in another unit. */
export interface UnitChange {
  /** First row in the other unit. */
  readonly row: number;
  /** Values from there on are to be multiplied by this. */
  readonly scale: number;
  /** The scale in words. */
  readonly text: string;
}

const scales = [
  { scale: 1000, text: '1000 (k… to …)' },
  { scale: 0.001, text: '1/1000 (… to k…)' },
  { scale: 0.3048, text: '0.3048 (feet to metres)' },
  { scale: 1 / 0.3048, text: '1/0.3048 (metres to feet)' },
  { scale: 1 / 3.6, text: '1/3.6 (km/h to m/s)' },
  { scale: 3.6, text: '3.6 (m/s to km/h)' },
  { scale: 0.44704, text: '0.44704 (mph to m/s)' },
  { scale: 1 / 0.44704, text: '1/0.44704 (m/s to mph)' },
] as const;

/** Between these lies no ratio that the scales above leave within their fifth. */
const LEAST_RATIO = 0.8 / 1000;
const HIGHEST_BELOW_ONE = 0.54;
const LOWEST_ABOVE_ONE = 1.78;

function mayBeRatio(ratio: number): boolean {
  return ratio > LOWEST_ABOVE_ONE || (ratio < HIGHEST_BELOW_ONE && ratio > 0.99 * LEAST_RATIO);
}

/** Whether any two neighbours differ by a ratio that could be that of two units. */
function anyRatioOfUnits(values: Float64Array): boolean {
  let before = Number.NaN;
  for (let i = 0; i < values.length; i++) {
    const x = values[i]!;
    if (!Number.isFinite(x)) continue;
    if (mayBeRatio(x / before)) return true;
    before = x;
  }
  return false;
}

/** Values on the other side of a jump that must go on smoothly once scaled. */
const WITNESSES = 5;

/**
 * Places where a channel jumps by exactly the ratio of two units and goes on smoothly at the new scale. Values
 * must be large against what the vehicle does between two rows, else a ratio proves nothing.
 */
export function unitChanges(time: Float64Array, values: Float64Array): UnitChange[] {
  const course = courseOf(values);
  if (course.whole && !course.mayLeap) return [];
  if (!course.whole && !anyRatioOfUnits(values)) return [];
  const index = finiteIndex(values);
  const found: UnitChange[] = [];
  let soFar = 1;
  for (let k = WITNESSES; k + WITNESSES < index.length; k++) {
    if (course.whole && !course.mayLeapIn(blockOf(k))) {
      k = lastOfBlock(k);
      continue;
    }
    const before = values[index[k - 1]!]! * soFar;
    const here = values[index[k]!]! * soFar;
    if (before === 0 || here === 0 || Math.sign(before) !== Math.sign(here)) continue;
    const ratio = here / before;
    if (!mayBeRatio(ratio) || !scales.some(({ scale }) => Math.abs(ratio * scale - 1) < 0.2)) continue;
    const rate = usualRate(time, values, index, k - ROWS_BEHIND) * soFar;
    const dt = time[index[k]!]! - time[index[k - 1]!]!;
    if (Math.abs(here - before) <= FAR * rate * dt || rate * dt > 0.05 * Math.abs(before)) continue;
    const match = scales.find(
      ({ scale }) => Math.abs(here * scale - before) <= 3 * rate * dt + 1e-3 * Math.abs(before),
    );
    if (match === undefined) continue;
    let smooth = 0;
    for (let j = 1; j < WITNESSES; j++) {
      const step = (values[index[k + j]!]! - values[index[k + j - 1]!]!) * soFar * match.scale;
      if (
        Math.abs(step) <=
        4 * rate * (time[index[k + j]!]! - time[index[k + j - 1]!]!) + 1e-3 * Math.abs(before)
      )
        smooth++;
    }
    if (smooth < WITNESSES - 2) continue;
    soFar *= match.scale;
    found.push({ row: index[k]!, scale: match.scale, text: match.text });
  }
  return found;
}
