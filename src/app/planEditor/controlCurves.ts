import type { PlanCurve } from '../protocol.ts';
import { type FlownControls, valueOn } from './flownControls.ts';

type Values = readonly (number | null)[];

/** Planned and flown controls over one axis. */
export interface ControlCurves {
  readonly at: readonly number[];
  readonly pitch: { readonly planned: Values; readonly flown: Values };
  readonly throttle: { readonly planned: Values; readonly flown: Values };
}

/** Points of the flown curves: more than a chart has pixels for are not told apart. */
const most = 300;

/** Lays what is planned and what was flown over the places that either has, the plan's steps kept. */
export function controlCurves(plan: PlanCurve | null, flown: FlownControls | null): ControlCurves {
  const planAt = plan?.at ?? [];
  const flownAt = flown?.at ?? [];
  const step = Math.max(1, Math.ceil(flownAt.length / most));
  // A place of both is the plan's, which alone may stand there twice.
  const known = new Set(planAt);
  const places = [
    ...planAt.map((x, row) => ({ x, row, sample: -1 })),
    ...flownAt.flatMap((x, sample) =>
      known.has(x) || (sample % step !== 0 && sample < flownAt.length - 1) ? [] : [{ x, row: -1, sample }],
    ),
  ].sort((a, b) => a.x - b.x);
  const side = (planned: Values | null | undefined, was: Values = []) => ({
    planned: places.map(({ x, row }) =>
      planned == null ? null : row >= 0 ? (planned[row] ?? null) : valueOn(planAt, planned, x),
    ),
    flown: places.map(({ x, sample }) => (sample >= 0 ? (was[sample] ?? null) : valueOn(flownAt, was, x))),
  });
  return {
    at: places.map((p) => p.x),
    pitch: side(plan?.pitch_deg, flown?.pitch_deg),
    throttle: side(plan?.throttle_percent, flown?.throttle_percent),
  };
}
