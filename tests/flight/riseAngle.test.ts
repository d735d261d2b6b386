import { expect, test } from 'vitest';
import { fuseRise } from '../../src/flight/riseAngle.ts';
import { EARTH } from '../../src/world/bodies.ts';
import { normalNumbers } from '../noise.ts';

/** A rise that leans over slowly: exact speeds from a thrust of 14 m/s² along the pitch, no air, no rotation. */
const world = { ...EARTH, spin_rad_s: 0, atmosphere: null };
const n = 401;
const time = Float64Array.from({ length: n }, (_, i) => i * 0.1);
const pitch = time.map((t) => Math.PI / 2 - 0.15 * Math.min(1, Math.max(0, (t - 10) / 20)));
const up = new Float64Array(n);
const across = new Float64Array(n);
const g = world.mu_m3_s2 / world.radius_m ** 2;
for (let i = 1; i < n; i++) {
  const theta = (pitch[i]! + pitch[i - 1]!) / 2;
  up[i] = up[i - 1]! + (14 * Math.sin(theta) - g) * 0.1;
  across[i] = across[i - 1]! + 14 * Math.cos(theta) * 0.1;
}
const speed = up.map((u, i) => Math.hypot(u, across[i]!));
const radius = new Float64Array(n).fill(world.radius_m);

function fused(sigma_m_s: number, pitchSigma_rad: number) {
  const next = normalNumbers(3);
  const verticalSpeed = up.map((u, i) => Math.min(speed[i]!, u + sigma_m_s * next()));
  const angle = verticalSpeed.map((u, i) =>
    speed[i]! > 0 ? Math.asin(Math.max(-1, Math.min(1, u / speed[i]!))) : Math.PI / 2,
  );
  const rough = Float64Array.from(angle);
  const sigma = fuseRise(
    {
      world,
      latitude_rad: 0,
      azimuth_rad: Math.PI / 2,
      time,
      radius,
      speed,
      verticalSpeed: Float64Array.from(verticalSpeed),
      verticalSigma_m_s: sigma_m_s,
      speedSigma_m_s: 0,
      pitchSigma_rad,
      pitch: pitch.map((p) => p + pitchSigma_rad * next()),
      from: 0,
      to: n - 1,
    },
    angle,
    verticalSpeed,
  );
  return { angle, rough, sigma, verticalSpeed };
}

const truth = up.map((u, i) => Math.atan2(u, across[i]!));
const worst = (angle: Float64Array): number => {
  let most = 0;
  for (let i = 20; i < 150; i++) most = Math.max(most, Math.abs(angle[i]! - truth[i]!));
  return most;
};

test('near the vertical the gathered angle is many times surer than the altitude’s', () => {
  const { angle, rough, sigma } = fused(0.5, 0.007);
  expect(worst(rough)).toBeGreaterThan(0.1);
  // Measured: 0.012 rad.
  expect(worst(angle)).toBeLessThan(0.03);
  expect(sigma[100]!).toBeGreaterThan(0);
  expect(sigma[100]!).toBeLessThan(0.02);
});

test('gravity over the rise comes out within 0.2 m/s', () => {
  const { verticalSpeed } = fused(0.5, 0.007);
  let gravity = 0;
  let exact = 0;
  for (let i = 1; i < 300; i++) {
    gravity += ((g * verticalSpeed[i]!) / speed[i]!) * 0.1;
    exact += ((g * up[i]!) / speed[i]!) * 0.1;
  }
  expect(Math.abs(gravity - exact)).toBeLessThan(0.2);
});

test('a clean altitude is left alone', () => {
  const { angle, rough, sigma } = fused(0.001, 0);
  expect(angle).toEqual(rough);
  expect(Number.isNaN(sigma[50]!)).toBe(true);
});
