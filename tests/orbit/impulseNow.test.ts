import { describe, expect, test } from 'vitest';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';
import { deltaVToGo, type PlanarState, type ToGoTarget } from '../../src/orbit/toGo.ts';

const mu_m3_s2 = 3.986004418e14;
const surface = 6_378_137;
const floorRadius_m = surface + 120e3;
const toGo = (target: ToGoTarget, s: PlanarState) => deltaVToGo({ mu_m3_s2, floorRadius_m, target }, s);
const state = (altitude_m: number, up: number, along: number): PlanarState => ({
  radius_m: surface + altitude_m,
  radialSpeed_m_s: up,
  tangentialSpeed_m_s: along,
});

describe('suborbital target', () => {
  const target: ToGoTarget = { kind: 'suborbital', peakRadius_m: surface + 100e3 };

  test('straight up from rest: the speed that reaches the peak', () => {
    const needed = Math.sqrt(2 * mu_m3_s2 * (1 / surface - 1 / (surface + 100e3)));
    expect(toGo(target, state(0, 0, 0)).deltaV_m_s).toBeCloseTo(needed, 3);
    expect(toGo(target, state(0, 500, 0)).deltaV_m_s).toBeCloseTo(needed - 500, 3);
  });

  test('nothing when the path reaches the peak, when it is there or above it', () => {
    for (const s of [state(20e3, 1400, 300), state(100e3, -50, 0), state(150e3, 0, 0)])
      expect(toGo(target, s)).toMatchObject({ deltaV_m_s: 0, route: 'none' });
  });

  test('no other impulse of that size does better, none smaller does', () => {
    for (const s of [
      state(10e3, 300, 400),
      state(60e3, 500, 1500),
      state(60e3, -200, 1500),
      state(80e3, 50, 7000),
    ]) {
      const least = toGo(target, s).deltaV_m_s;
      const peak = (size: number) => {
        let highest = 0;
        for (let k = 0; k < 720; k++) {
          const angle = (k * Math.PI) / 360;
          const up = s.radialSpeed_m_s + size * Math.sin(angle);
          const along = s.tangentialSpeed_m_s + size * Math.cos(angle);
          if (up < 0) continue;
          highest = Math.max(highest, orbitFromPlanarState(mu_m3_s2, s.radius_m, up, along).apoapsisRadius_m);
        }
        return highest;
      };
      expect(peak(least * 0.999)).toBeLessThan(target.peakRadius_m);
      expect(peak(least * 1.001)).toBeGreaterThan(target.peakRadius_m);
    }
  });
});

describe('escape', () => {
  test('along the speed to the stated C3', () => {
    const s = state(300e3, 200, 7700);
    const needed = Math.sqrt(12e6 + (2 * mu_m3_s2) / s.radius_m) - Math.hypot(200, 7700);
    const found = toGo({ kind: 'escape', c3_m2_s2: 12e6 }, s);
    expect(found.deltaV_m_s).toBeCloseTo(needed, 7);
    expect(found).toMatchObject({ route: 'one-impulse', firstImpulseNow: true });
  });

  test('nothing when the path has it', () => {
    const s = state(300e3, 100, 12_000);
    const c3_m2_s2 = 100 ** 2 + 12_000 ** 2 - (2 * mu_m3_s2) / s.radius_m;
    expect(toGo({ kind: 'escape', c3_m2_s2 }, s).deltaV_m_s).toBeLessThan(1e-8);
  });

  test('a fall below the floor is turned as far as it must be', () => {
    const s = state(200e3, -3000, 6000);
    const found = toGo({ kind: 'escape', c3_m2_s2: 0 }, s).deltaV_m_s;
    const speed = Math.sqrt((2 * mu_m3_s2) / s.radius_m);
    expect(found).toBeGreaterThan(speed - Math.hypot(3000, 6000));
    // The cheapest of all directions whose path keeps off the floor.
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k <= 20_000; k++) {
      const angle = (k / 20_000 - 0.5) * Math.PI;
      const up = speed * Math.sin(angle);
      const along = speed * Math.cos(angle);
      if (up < 0 && orbitFromPlanarState(mu_m3_s2, s.radius_m, up, along).periapsisRadius_m < floorRadius_m)
        continue;
      least = Math.min(least, Math.hypot(up + 3000, along - 6000));
    }
    // The directions tried lie 1.7 m/s apart.
    expect(Math.abs(found - least)).toBeLessThan(1);
    expect(found).toBeLessThan(least + 1e-9);
  });
});
