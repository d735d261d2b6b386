import { type ControlTolerance, fineTolerance, sparseControls } from './sparseControls.ts';
import type { Plan } from './types.ts';

export interface ThinnedPlan {
  readonly plan: Plan;
  /** How far its controls may be from the original's; null where every row stayed. */
  readonly within: ControlTolerance | null;
}

/**
 * A plan with no more rows than a person can edit: the rows between which straight lines follow it closest. Its
 * events stay, all of them.
 * @param most rows at the most (2 or more); reached by doubling the tolerance, so often fewer
 */
export function thinPlan(plan: Plan, most: number): ThinnedPlan {
  const { axisValues, pitch_rad, throttle } = plan;
  if (axisValues.length <= most) return { plan, within: null };
  let rows = Array.from(axisValues, (along, i) => ({
    time_s: along,
    pitch_rad: pitch_rad?.[i] ?? 0,
    throttle: throttle?.[i] ?? 0,
  }));
  const dense = rows;
  let within = fineTolerance;
  // A tolerance over half a turn keeps the ends of each smooth stretch alone; steps stay and are not to be thinned.
  for (; within.pitch_rad < Math.PI; within = doubled(within)) {
    rows = sparseControls(dense, within);
    if (rows.length <= most) break;
  }
  return {
    plan: {
      ...plan,
      axisValues: Float64Array.from(rows, (r) => r.time_s),
      pitch_rad: pitch_rad === null ? null : Float64Array.from(rows, (r) => r.pitch_rad),
      throttle: throttle === null ? null : Float64Array.from(rows, (r) => r.throttle),
    },
    within,
  };
}

function doubled({ pitch_rad, throttle }: ControlTolerance): ControlTolerance {
  return { pitch_rad: 2 * pitch_rad, throttle: 2 * throttle };
}
