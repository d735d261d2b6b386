import { type PlanarStates, ToGoAlong } from './toGoAlong.ts';
import type { ToGoProblem } from './toGoTypes.ts';

export type { PlanarStates } from './toGoAlong.ts';

/** Delta-v to go along a flight, at a choice of its samples. */
export interface ToGoCurve {
  readonly time_s: Float64Array;
  /** Delta-v to go; NaN where the state is missing. */
  readonly toGo_m_s: Float64Array;
  /** Sample of each point. */
  readonly index: Int32Array;
  /** Largest departure from a straight line met in a stretch that was not divided further. */
  readonly straightWithin_m_s: number;
  /** Delta-v to go at any time between the first sample and the last, on straight lines between the points. */
  readonly at: (time_s: number) => number;
  /** Values and slopes at any other sample, by way of those known. */
  readonly along: ToGoAlong;
}

/** A stretch is divided until its middle lies this close to the straight line. */
const STRAIGHT_M_S = 0.1;
/** Stretches looked at in any case, by equal times, so that nothing hides between two ends that agree. */
const LEAST_STRETCHES = 48;
/** Noise in a log could otherwise ask for every sample. */
const MOST_EVALUATIONS = 1500;

/**
 * Delta-v to go at the samples that a piecewise straight curve needs: the first and last, those nearest to the
 * break times (ends of burns), some at even times, and between them wherever the middle sample departs from the
 * straight line by more than 0.1 m/s, worst first, up to 1,500 evaluations in all.
 */
export function toGoCurve(
  problem: ToGoProblem,
  states: PlanarStates,
  breaks_s: readonly number[] = [],
): ToGoCurve {
  const { time_s: time } = states;
  const last = time.length - 1;
  const along = new ToGoAlong(problem, states);
  const valueAt = (i: number): number => along.valueAt(i);
  const even = Array.from(
    { length: LEAST_STRETCHES + 1 },
    (_, k) => time[0]! + ((time[last]! - time[0]!) * k) / LEAST_STRETCHES,
  );
  const nearBreaks = breaks_s.map((t) => nearestSample(time, t));
  const nodes = new Set([0, last, ...nearBreaks, ...even.map((t) => nearestSample(time, t))]);
  const sorted = last < 0 ? [] : [...nodes].sort((a, b) => a - b);
  // Each third by a search of its own; those between follow their neighbours where that can be trusted.
  for (let k = 0; k < sorted.length; k += 3) along.searchedAt(sorted[k]!);
  for (const i of [last, ...nearBreaks]) if (i >= 0) along.searchedAt(i);

  let straightWithin_m_s = 0;
  let open = sorted
    .slice(1)
    .map((to, k): Stretch => ({ from: sorted[k]!, to, departure: Number.POSITIVE_INFINITY }));
  while (open.length > 0) {
    const next: Stretch[] = [];
    for (const { from, to, departure } of open.sort((a, b) => b.departure - a.departure)) {
      if (to - from < 2) continue;
      if (along.evaluations >= MOST_EVALUATIONS) {
        if (Number.isFinite(departure)) straightWithin_m_s = Math.max(straightWithin_m_s, departure);
        continue;
      }
      const middle = Math.min(
        to - 1,
        Math.max(from + 1, nearestSample(time, 0.5 * (time[from]! + time[to]!))),
      );
      const left = valueAt(from);
      const right = valueAt(to);
      const share = (time[middle]! - time[from]!) / (time[to]! - time[from]!);
      const off = Math.abs(valueAt(middle) - (left + (right - left) * share));
      const missing = [left, right, valueAt(middle)].filter(Number.isNaN).length;
      if (missing === 3) continue;
      if (missing === 0 && off <= STRAIGHT_M_S) {
        straightWithin_m_s = Math.max(straightWithin_m_s, off);
        continue;
      }
      const rest = missing > 0 ? Number.POSITIVE_INFINITY : off;
      // Where the departure falls by a quarter at each halving, as a smooth curve's does, the halves are told.
      if (off <= 2 * STRAIGHT_M_S && off > departure / 8 && off < departure / 3) {
        straightWithin_m_s = Math.max(straightWithin_m_s, off / 3);
        continue;
      }
      next.push({ from, to: middle, departure: rest }, { from: middle, to, departure: rest });
    }
    open = next;
  }
  const index = along.samples();
  const curveTime = Float64Array.from(index, (i) => time[i]!);
  const toGo_m_s = Float64Array.from(index, valueAt);
  return {
    time_s: curveTime,
    toGo_m_s,
    index,
    straightWithin_m_s,
    at: (t) => onStraightLines(curveTime, toGo_m_s, t),
    along,
  };
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Departure from the straight line of the stretch that this is half of. */
  readonly departure: number;
}

/** Index of the first time that is not before `t`, or the last. */
function firstAtOrAfter(time: Float64Array, t: number): number {
  let low = 0;
  let high = time.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (time[middle]! < t) low = middle + 1;
    else high = middle;
  }
  return low;
}

function nearestSample(time: Float64Array, t: number): number {
  const after = firstAtOrAfter(time, t);
  return after > 0 && t - time[after - 1]! < time[after]! - t ? after - 1 : after;
}

function onStraightLines(time: Float64Array, value: Float64Array, t: number): number {
  if (time.length === 0 || !(t >= time[0]! && t <= time[time.length - 1]!)) return Number.NaN;
  const after = firstAtOrAfter(time, t);
  if (time[after] === t || after === 0) return value[after]!;
  const share = (t - time[after - 1]!) / (time[after]! - time[after - 1]!);
  return value[after - 1]! + (value[after]! - value[after - 1]!) * share;
}
