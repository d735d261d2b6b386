import { expect, test } from 'vitest';
import { primerVector } from '../../src/orbit/primer.ts';
import { deltaVToGo, type PlanarState, type ToGoProblem } from '../../src/orbit/toGo.ts';

const surface = 6_378_137;
const problem: ToGoProblem = {
  mu_m3_s2: 3.986004418e14,
  floorRadius_m: surface + 120e3,
  target: { kind: 'orbit', apoapsisRadius_m: surface + 200e3, periapsisRadius_m: surface + 200e3 },
};
const state = (altitude_km: number, radialSpeed_m_s: number, tangentialSpeed_m_s: number): PlanarState => ({
  radius_m: surface + altitude_km * 1e3,
  radialSpeed_m_s,
  tangentialSpeed_m_s,
});

test('where it pays to burn at once it has length 1 and points along the impulse', () => {
  const at = state(68.7, 890, 3171);
  const { impulses_m_s, firstImpulseNow } = deltaVToGo(problem, at);
  expect(firstImpulseNow).toBe(true);
  const primer = primerVector(problem, at);
  // Envelope theorem: C changes with the first impulse only. Measured 2e-8.
  expect(primer.magnitude).toBeCloseTo(1, 6);
  // Along it the delta-v to go falls one for one, to the end of that impulse.
  const half = 0.5 * (impulses_m_s[0] ?? 0);
  const there = deltaVToGo(problem, {
    radius_m: at.radius_m,
    radialSpeed_m_s: at.radialSpeed_m_s + half * primer.radial,
    tangentialSpeed_m_s: at.tangentialSpeed_m_s + half * primer.tangential,
  });
  expect(deltaVToGo(problem, at).deltaV_m_s - there.deltaV_m_s).toBeCloseTo(half, 4);
});

test('nowhere longer than 1', () => {
  for (const at of [
    state(10, 350, 450),
    state(125, 2400, 650),
    state(295, 1350, 1340),
    state(308, -1300, 4136),
  ])
    expect(primerVector(problem, at).magnitude).toBeLessThan(1 + 1e-6);
});

test('less than 1 while the impulse had better wait, and the same from the other side', () => {
  const at = state(295, 1350, 1340);
  expect(deltaVToGo(problem, at).firstImpulseNow).toBe(false);
  const primer = primerVector(problem, at);
  expect(primer.magnitude).toBeLessThan(0.999);
  expect(primerVector(problem, { ...at, tangentialSpeed_m_s: -1340 })).toEqual(primer);
});
