import { describe, expect, test } from 'vitest';
import { fusePath } from '../../../src/flight/smooth/fusedPath.ts';
import type { PathEvidence, WeighedSamples } from '../../../src/flight/smooth/pathEvidence.ts';
import { normalNumbers } from '../../noise.ts';

/** A climb of 10 m/s² up and 3 across to 60 s, then free fall under 9 m/s²; times uneven. */
const BREAK_S = 60;
const times = Float64Array.from({ length: 500 }, (_, i) => 0.2 * i + 0.06 * Math.sin(7 * i));
const after = (t: number): number => Math.max(0, t - BREAK_S);
const up = (t: number): number => 10 * Math.min(t, BREAK_S) - 9 * after(t);
const across = (t: number): number => 3 * Math.min(t, BREAK_S);
const height = (t: number): number => 5 * Math.min(t, BREAK_S) ** 2 + 600 * after(t) - 4.5 * after(t) ** 2;

function seen(of: (t: number) => number, sigma: number, seed: number): WeighedSamples {
  const next = normalNumbers(seed);
  return {
    t: times,
    y: times.map((t) => of(t) + sigma * next()),
    variance: new Float64Array(times.length).fill(sigma * sigma),
  };
}

function evidence(
  seed: number,
  sigma: { altitude: number; speed: number; rate: number },
  off = 3,
): PathEvidence {
  return {
    altitude: seen(height, sigma.altitude, seed),
    verticalSpeed: seen(up, sigma.rate, seed + 1),
    horizontalSpeed: null,
    speed: seen((t) => Math.hypot(up(t), across(t)), sigma.speed, seed + 2),
    distance: null,
    breaks: [BREAK_S],
    restUntil_s: 0,
    guess: {
      verticalSpeed: times.map((t) => up(t) + off * Math.sin(t)),
      speed: times.map((t) => Math.hypot(up(t), across(t)) + off * Math.cos(t)),
    },
    query: times,
  };
}

const rms = (values: Iterable<number>): number => {
  const all = Array.from(values);
  return Math.sqrt(all.reduce((sum, x) => sum + x * x, 0) / all.length);
};

describe('a motion of constant accelerations with one break', () => {
  test('without noise it comes back as it is, the break not smeared', () => {
    const fused = fusePath(evidence(1, { altitude: 1e-3, speed: 1e-3, rate: 1e-3 }, 0.1))!;
    times.forEach((t, i) => {
      if (t < 1) return;
      expect(Math.abs(fused.altitude[i]! - height(t))).toBeLessThan(0.01);
      expect(Math.abs(fused.verticalSpeed[i]! - up(t))).toBeLessThan(0.01);
      expect(Math.abs(fused.horizontalSpeed[i]! - across(t))).toBeLessThan(0.02);
    });
  });

  test('with noise the errors are as large as it says, and smaller than any channel’s own', () => {
    const shares: Record<'altitude' | 'vertical' | 'across', number[]> = {
      altitude: [],
      vertical: [],
      across: [],
    };
    for (let seed = 0; seed < 20; seed++) {
      const fused = fusePath(evidence(100 * seed + 7, { altitude: 5, speed: 1, rate: 2 }))!;
      times.forEach((t, i) => {
        if (t < 5) return;
        shares.altitude.push((fused.altitude[i]! - height(t)) / fused.altitudeSigma[i]!);
        shares.vertical.push((fused.verticalSpeed[i]! - up(t)) / fused.verticalSigma[i]!);
        shares.across.push((fused.horizontalSpeed[i]! - across(t)) / fused.horizontalSigma[i]!);
        expect(fused.altitudeSigma[i]!).toBeLessThan(2.5);
        expect(fused.verticalSigma[i]!).toBeLessThan(1);
      });
    }
    // One sigma, within what twenty draws of slow waves scatter by.
    for (const errors of Object.values(shares)) {
      expect(rms(errors)).toBeGreaterThan(0.7);
      expect(rms(errors)).toBeLessThan(1.3);
    }
  });

  test('rougher motion is found to be rougher', () => {
    const smooth = fusePath(evidence(3, { altitude: 5, speed: 1, rate: 2 }))!;
    const shaken = evidence(3, { altitude: 5, speed: 1, rate: 2 });
    const rough = fusePath({
      ...shaken,
      altitude: {
        ...shaken.altitude,
        y: shaken.altitude.y.map((y, i) => y + 60 * Math.sin(times[i]! / 2)),
      },
      verticalSpeed: {
        ...shaken.verticalSpeed!,
        y: shaken.verticalSpeed!.y.map((y, i) => y + 30 * Math.cos(times[i]! / 2)),
      },
      speed: null,
      horizontalSpeed: seen(across, 1, 5),
    });
    expect(rough!.jerkDensity).toBeGreaterThan(10 * smooth.jerkDensity);
  });

  test('channels that tell different motions are not fused', () => {
    const honest = evidence(4, { altitude: 5, speed: 1, rate: 2 });
    const rate = honest.verticalSpeed!;
    expect(fusePath(honest)).not.toBeNull();
    expect(fusePath({ ...honest, verticalSpeed: { ...rate, y: rate.y.map((y) => 1.1 * y) } })).toBeNull();
  });
});
