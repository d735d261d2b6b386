import { expect, test } from 'vitest';
import {
  bandText,
  curveEnds,
  curveSentence,
  halfAt,
  heroCurve,
} from '../../../src/exchange/report/heroCurve.ts';
import type { Review } from '../../../src/review/types.ts';

function reviewWith(margin: (number | null)[], toGo: (number | null)[]): Review {
  const nothing = { value: null, low: null, high: null, basis: 'unavailable', reason: 'no dry masses' };
  return {
    orbit: { cutoff_s: 15 },
    mission: { targetOrbit: { apoapsisAltitude_m: 160_000, periapsisAltitude_m: 160_000 } },
    budget: { margin: nothing, deltaVToGo: nothing, curves: { time_s: [0, 10, 20], margin, toGo } },
  } as unknown as Review;
}

test('the margin leads where there is one', () => {
  const curve = heroCurve(reviewWith([100, 0, -50], [900, 800, 700]));
  expect(curve?.kind).toBe('margin');
  expect(curve && curveSentence(curve, 10)).toBe(
    'Margin against time: 100 m/s at lift-off, below zero from 10 s, −25 m/s at 15 s',
  );
});

test('delta-v to go takes its place and says why', () => {
  const curve = heroCurve(reviewWith([null, null, null], [null, 800, 700]));
  expect(curve?.kind).toBe('to-go');
  expect(curve?.instead).toContain('no dry masses');
  expect(curve && curveEnds(curve)?.first).toEqual({ time_s: 10, value: 800 });
});

test('without either there is no curve', () => {
  expect(heroCurve(reviewWith([null, null, null], [null, null, null]))).toBeNull();
});

test('the interval along the curve is told at both ends, and read between its points', () => {
  const review = reviewWith([100, 0, -50], [900, 800, 700]);
  const band = {
    margin: { low: [96, -2, -50.01], high: [104, 2, -49.99] },
    toGo: { low: [], high: [] },
    projectedTotal: { low: [], high: [] },
  };
  const curve = heroCurve({ ...review, budget: { ...review.budget, band } });
  expect(curve && halfAt(curve, 5)).toBeCloseTo(3, 9);
  expect(curve && bandText(curve)).toBe('shaded: the 95 % interval, ±4.0 m/s at lift-off, ±1.0 m/s at 15 s');
  const without = heroCurve(review);
  expect(without && bandText(without)).toBeNull();
});

test('what goes out of reach is an orbit only where one was the target', () => {
  const review = reviewWith([100, 0, -50], [900, 800, 700]);
  expect(heroCurve(review)!.goal).toBe('orbit');
  const peak = { ...review, mission: { ...review.mission, targetOrbit: null } };
  expect(heroCurve(peak)!.goal).toBe('target');
});
