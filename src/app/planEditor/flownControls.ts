import type { PlanAxis } from '../../plan/types.ts';
import type { Analysis } from '../../review/types.ts';

/** What a flight did along an axis, on its way up: each value of the axis as it was first reached. */
export interface FlownControls {
  readonly time_s: readonly number[];
  /** s, m or m/s; rising. */
  readonly at: readonly number[];
  readonly pitch_deg: readonly (number | null)[];
  readonly throttle_percent: readonly (number | null)[];
}

const channels = { altitude: 'altitude_m', speed: 'speed_m_s' } as const;

/** The controls of a flight from lift-off to its last cutoff. */
export function flownControls({ review, strips }: Analysis, axis: PlanAxis): FlownControls {
  const { time_s, channels: all } = strips;
  const along = axis === 'time' ? time_s : all[channels[axis]]?.values;
  const end_s = review.orbit.cutoff_s ?? review.ledger.end_s ?? Number.POSITIVE_INFINITY;
  const kept: number[] = [];
  let reached = Number.NEGATIVE_INFINITY;
  for (let i = 0; along !== undefined && i < time_s.length; i++) {
    const [time, value] = [time_s[i] ?? Number.NaN, along[i] ?? Number.NaN];
    if (!(time >= 0 && time <= end_s && value > reached)) continue;
    reached = value;
    kept.push(i);
  }
  const read = (values: ArrayLike<number> | undefined, scale: number) =>
    kept.map((i) => {
      const value = values?.[i] ?? Number.NaN;
      return Number.isFinite(value) ? value * scale : null;
    });
  return {
    time_s: kept.map((i) => time_s[i] ?? 0),
    at: kept.map((i) => along?.[i] ?? 0),
    pitch_deg: read(all.pitch_deg?.values, 1),
    throttle_percent: read(all.throttle?.values, 100),
  };
}

/**
 * The value of a curve at a place of its rising axis, on the straight line between its points.
 * @param at equal neighbours are a step: at it, the value before
 * @returns null outside the axis, and beside a point that has no value
 */
export function valueOn(at: readonly number[], values: readonly (number | null)[], x: number): number | null {
  const k = at.findIndex((v) => v >= x);
  const [after, before] = [values[k] ?? null, values[Math.max(0, k - 1)] ?? null];
  const [right, left] = [at[k], at[Math.max(0, k - 1)]];
  if (right === undefined || left === undefined || after === null) return null;
  if (right === x) return after;
  return before === null || left > x ? null : before + ((x - left) / (right - left)) * (after - before);
}
