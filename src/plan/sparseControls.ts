import type { AscentPlan } from './types.ts';

type PlanRow = AscentPlan['rows'][number];

/** How far what stands between two rows of a plan may be from the controls that it was made from. */
export interface ControlTolerance {
  readonly pitch_rad: number;
  /** Fraction of full. */
  readonly throttle: number;
}

/** For plans that are flown again and must end where the original did. */
export const fineTolerance: ControlTolerance = { pitch_rad: (0.05 * Math.PI) / 180, throttle: 0.003 };

/**
 * The fewest rows of a dense control history between which straight lines stay within tolerance (Ramer 1972,
 * Douglas & Peucker 1973). Two rows of one time are a step and both stay.
 */
export function sparseControls(dense: readonly PlanRow[], within = fineTolerance): PlanRow[] {
  const keep = new Uint8Array(dense.length);
  let from = 0;
  for (let i = 1; i <= dense.length; i++) {
    if (i < dense.length && dense[i]!.time_s > dense[i - 1]!.time_s) continue;
    keepBetween(dense, from, i - 1, keep, within);
    from = i;
  }
  return dense.filter((_, i) => keep[i] === 1);
}

function keepBetween(
  dense: readonly PlanRow[],
  from: number,
  to: number,
  keep: Uint8Array,
  within: ControlTolerance,
): void {
  keep[from] = 1;
  keep[to] = 1;
  const a = dense[from]!;
  const b = dense[to]!;
  let worst = 1;
  let at = -1;
  for (let i = from + 1; i < to; i++) {
    const row = dense[i]!;
    const part = (row.time_s - a.time_s) / (b.time_s - a.time_s);
    const pitch = Math.abs(row.pitch_rad - a.pitch_rad - part * (b.pitch_rad - a.pitch_rad));
    const throttle = Math.abs(row.throttle - a.throttle - part * (b.throttle - a.throttle));
    const off = Math.max(pitch / within.pitch_rad, throttle / within.throttle);
    if (off <= worst) continue;
    worst = off;
    at = i;
  }
  if (at < 0) return;
  keepBetween(dense, from, at, keep, within);
  keepBetween(dense, at, to, keep, within);
}
