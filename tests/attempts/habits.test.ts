import { expect, test } from 'vitest';
import { habitsOf } from '../../src/attempts/habits.ts';
import type { Review, Strips } from '../../src/review/types.ts';
import { figure, handMadeReview } from '../exchange/handMadeReview.ts';

const n = 101;
const time_s = Float64Array.from({ length: n }, (_, i) => 5 * i);
const strip = (f: (t: number) => number) => ({ values: time_s.map(f), basis: 'derived' as const });

const strips: Strips = {
  time_s,
  channels: {
    pitch_deg: strip((t) => Math.max(0, 90 - t / 2)),
    thrustToWeight: strip((t) => 1.2 + t / 100),
    dynamicPressure_Pa: strip((t) => Math.max(0, 100 - Math.abs(t - 60))),
    angleOfAttack_deg: strip((t) => (t < 200 ? 2 : 30)),
    altitude_m: strip((t) => 400 * t),
  },
};

const review: Review = {
  ...handMadeReview(),
  events: [
    { name: 'pitch-over', time_s: 14, planned_s: null, subject: null, altitude_m: 500, speed_m_s: 50 },
    { name: 'max-q', time_s: 60, planned_s: null, subject: null, altitude_m: 9000, speed_m_s: 400 },
  ],
};

test('pitch-over, tilt ten seconds later, thrust-to-weight at max q', () => {
  const habits = habitsOf(review, strips);
  expect(habits.pitchOverTime_s).toBe(14);
  expect(habits.pitchOverAngle_deg).toBeCloseTo(12, 9);
  expect(habits.thrustToWeightAtMaxQ).toBeCloseTo(1.8, 9);
});

test('the angle of attack counts in dense air only', () => {
  expect(habitsOf(review, strips).angleOfAttackInAir_deg).toBeCloseTo(2, 9);
});

test('the cutoff error is the speed over that of an orbit of the target’s energy there', () => {
  const { mission } = review;
  const R = mission.constants.radius_m;
  const mu = mission.constants.gravitationalParameter_m3_s2;
  const target = { apoapsisAltitude_m: 160_000, periapsisAltitude_m: 160_000 };
  const cutoff_s = 400;
  const r = mission.constants.radiusAtSite_m + 160_000;
  const wanted = Math.sqrt(mu * (2 / r - 1 / (R + 160_000)));
  // An orbit that is 10 m/s too fast at that radius.
  const a = 1 / (2 / r - (wanted + 10) ** 2 / mu);
  const late: Review = {
    ...review,
    mission: { ...mission, targetOrbit: target },
    orbit: {
      cutoff_s,
      atCutoff: { ...review.orbit.atCutoff, semiMajorAxis_m: figure(a, 100) },
    },
  };
  expect(habitsOf(late, strips).cutoffError_m_s).toBeCloseTo(10, 6);
  expect(
    habitsOf({ ...late, mission: { ...mission, targetOrbit: null } }, strips).cutoffError_m_s,
  ).toBeNull();
});

test('without strips only what the review itself tells', () => {
  const habits = habitsOf(review, null);
  expect(habits.pitchOverTime_s).toBe(14);
  expect(habits.pitchOverAngle_deg).toBeNull();
  expect(habits.angleOfAttackInAir_deg).toBeNull();
});
