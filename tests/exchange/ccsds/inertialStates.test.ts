import { expect, test } from 'vitest';
import { type Flown, inertialStates } from '../../../src/exchange/ccsds/inertialStates.ts';
import type { StripName } from '../../../src/review/types.ts';
import { handMadeReview } from '../handMadeReview.ts';

const R = 3_100_000;
const SPIN = 1.208e-4;
const frame = { name: 'X', meridian_rad: 0, remark: '' };

/** One row of a flight over the hand-made world, at a time after lift-off. */
function row(time_s: number, values: Partial<Record<StripName, number>>): Flown {
  const zero = {
    altitude_m: 0,
    latitude_deg: 0,
    longitude_deg: 0,
    verticalSpeed_m_s: 0,
    horizontalSpeed_m_s: 0,
    course_deg: 0,
  };
  const channels = Object.entries({ ...zero, ...values }).map(
    ([name, value]) => [name, { values: Float64Array.of(value), basis: 'derived' }] as const,
  );
  return {
    review: handMadeReview(),
    strips: { time_s: Float64Array.of(time_s), channels: Object.fromEntries(channels) },
  };
}

const near = (seen: readonly number[] | undefined, wanted: readonly number[]) => {
  for (const [i, value] of wanted.entries()) expect(seen?.[i]).toBeCloseTo(value, 6);
};

test('what stands on the equator is carried east by the spin', () => {
  const state = inertialStates(row(0, {}), frame)(0);
  near(state?.position_m, [R, 0, 0]);
  near(state?.velocity_m_s, [0, SPIN * R, 0]);
});

test('east, north and up point where they should at 90° east', () => {
  const at = (v: Partial<Record<StripName, number>>) =>
    inertialStates(row(0, { longitude_deg: 90, altitude_m: 1000, ...v }), frame)(0)?.velocity_m_s;
  const carried = -SPIN * (R + 1000);
  near(at({ horizontalSpeed_m_s: 100, course_deg: 90 }), [carried - 100, 0, 0]);
  near(at({ horizontalSpeed_m_s: 100 }), [carried, 0, 100]);
  near(at({ verticalSpeed_m_s: 100 }), [carried, 100, 0]);
});

test('at the pole the spin carries nothing, and north leads away from the meridian', () => {
  const state = inertialStates(row(0, { latitude_deg: 90, horizontalSpeed_m_s: 50 }), frame)(0);
  near(state?.position_m, [0, 0, R]);
  near(state?.velocity_m_s, [-50, 0, 0]);
});

test('the meridian turns with the world', () => {
  const quarter = Math.PI / 2 / SPIN;
  near(inertialStates(row(quarter, {}), frame)(0)?.position_m, [0, R, 0]);
  near(inertialStates(row(0, {}), { ...frame, meridian_rad: Math.PI / 2 })(0)?.position_m, [0, R, 0]);
});

test('a row without altitude has no state; one at rest needs no course', () => {
  expect(inertialStates(row(0, { altitude_m: Number.NaN }), frame)(0)).toBeNull();
  expect(inertialStates(row(0, { course_deg: Number.NaN }), frame)(0)).not.toBeNull();
});
