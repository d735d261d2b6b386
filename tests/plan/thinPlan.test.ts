import { expect, test } from 'vitest';
import { thinPlan } from '../../src/plan/thinPlan.ts';
import type { Plan } from '../../src/plan/types.ts';

/** A pitch program of `count` rows that falls ever more slowly, with a step in throttle at its middle. */
function dense(count: number, noise = 0): Plan {
  const at = Array.from({ length: count }, (_, i) => i);
  return {
    name: 'x.csv',
    form: 'flight',
    axis: 'time',
    axisValues: Float64Array.from(at),
    pitch_rad: Float64Array.from(at, (i) => Math.atan(2 - i / 150) + noise * Math.sin(1e4 * i)),
    throttle: Float64Array.from(at, (i) => (i < count / 2 ? 1 : 0.7)),
    events: [{ name: 'cutoff', subject: null, at: count - 1 }],
    log: null,
    assumed: [],
  };
}

function farthest(plan: Plan, thin: Plan): number {
  const { axisValues: at, pitch_rad: pitch } = thin;
  return Math.max(
    ...Array.from(plan.axisValues, (x, i) => {
      const k = Math.max(
        1,
        at.findIndex((a) => a >= x),
      );
      const part = (x - at[k - 1]!) / (at[k]! - at[k - 1]!);
      return Math.abs(plan.pitch_rad![i]! - pitch![k - 1]! - part * (pitch![k]! - pitch![k - 1]!));
    }),
  );
}

test('a plan that is short enough stays as it is', () => {
  const plan = dense(40);
  expect(thinPlan(plan, 60)).toEqual({ plan, within: null });
});

test.each([0, 0.01])(
  'a long one keeps its ends, its events and stays within what is told (noise %f rad)',
  (noise) => {
    const plan = dense(900, noise);
    const { plan: thin, within } = thinPlan(plan, 60);
    expect(thin.axisValues.length).toBeLessThanOrEqual(60);
    expect([thin.axisValues[0], thin.axisValues.at(-1)]).toEqual([0, 899]);
    expect(thin.events).toEqual(plan.events);
    expect(farthest(plan, thin)).toBeLessThanOrEqual(within?.pitch_rad ?? 0);
  },
);

test('controls that the plan does not have are not made up', () => {
  const { plan } = thinPlan({ ...dense(900), throttle: null }, 60);
  expect(plan.throttle).toBeNull();
});
