import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaVToGo, type ToGoProblem } from '../../src/orbit/toGo.ts';
import { type PlanarStates, toGoCurve } from '../../src/orbit/toGoCurve.ts';

const RADIUS_M = 3_100_000;
const problem: ToGoProblem = {
  mu_m3_s2: 6.8231e13,
  floorRadius_m: RADIUS_M + 110e3,
  target: { kind: 'orbit', apoapsisRadius_m: RADIUS_M + 160e3, periapsisRadius_m: RADIUS_M + 160e3 },
};

/** A synthetic reference flight's listed states, joined by straight lines on a fine axis. */
function flight(samples: number): { states: PlanarStates; breaks: number[] } {
  const path = join(import.meta.dirname, '../flights/osselby-short.truth.json');
  const rows: { t: number; altitude_m: number; radial_speed: number; horizontal_inertial_speed: number }[] =
    JSON.parse(readFileSync(path, 'utf8')).to_go;
  const end = rows[rows.length - 1]!.t;
  const time_s = Float64Array.from({ length: samples }, (_, i) => (end * i) / (samples - 1));
  const column = (of: (row: (typeof rows)[number]) => number) => {
    let k = 0;
    return time_s.map((t) => {
      while (k < rows.length - 2 && rows[k + 1]!.t <= t) k++;
      const a = rows[k]!;
      const b = rows[k + 1]!;
      return b.t === a.t ? of(b) : of(a) + ((of(b) - of(a)) * (t - a.t)) / (b.t - a.t);
    });
  };
  return {
    states: {
      time_s,
      radius_m: column((row) => RADIUS_M + row.altitude_m),
      radialSpeed_m_s: column((row) => row.radial_speed),
      tangentialSpeed_m_s: column((row) => row.horizontal_inertial_speed),
    },
    breaks: [167.694, 169.694],
  };
}

const exact = (states: PlanarStates, i: number) =>
  deltaVToGo(problem, {
    radius_m: states.radius_m[i]!,
    radialSpeed_m_s: states.radialSpeed_m_s[i]!,
    tangentialSpeed_m_s: states.tangentialSpeed_m_s[i]!,
  }).deltaV_m_s;

describe('toGoCurve', () => {
  const { states, breaks } = flight(50_000);
  const curve = toGoCurve(problem, states, breaks);

  test('a few hundred evaluations stand for fifty thousand samples', () => {
    expect(curve.time_s.length).toBeLessThan(600);
    expect(curve.straightWithin_m_s).toBeLessThanOrEqual(0.1);
  });

  test('between its points it is within the tolerance, at its points exact', () => {
    for (let i = 0; i < 50_000; i += 499)
      expect(Math.abs(curve.at(states.time_s[i]!) - exact(states, i))).toBeLessThan(0.15);
    for (let k = 0; k < curve.index.length; k += 40)
      // Found by way of the neighbours', not by a search of its own: equal but for the last digits.
      expect(Math.abs(curve.toGo_m_s[k]! - exact(states, curve.index[k]!))).toBeLessThan(1e-8);
  });

  test('the ends and the breaks are points of it', () => {
    const step = states.time_s[1]!;
    for (const t of [0, ...breaks, states.time_s[49_999]!])
      expect(Math.min(...curve.time_s.map((at) => Math.abs(at - t)))).toBeLessThanOrEqual(0.5 * step + 1e-9);
    expect(curve.at(-1)).toBeNaN();
    expect(curve.at(1e4)).toBeNaN();
  });

  test('ten times as many samples take about as many evaluations', () => {
    const finer = flight(500_000);
    const again = toGoCurve(problem, finer.states, finer.breaks);
    expect(Math.abs(again.time_s.length - curve.time_s.length)).toBeLessThan(60);
  });
});

test('where the state is missing the curve is, and only there', () => {
  const { states } = flight(2000);
  states.radialSpeed_m_s.fill(Number.NaN, 700, 800);
  const curve = toGoCurve(problem, states);
  expect(curve.at(states.time_s[750]!)).toBeNaN();
  for (const i of [0, 699, 800, 1999])
    expect(Math.abs(curve.at(states.time_s[i]!) - exact(states, i))).toBeLessThan(0.1);
});

test('a log that jumps about at every sample is cut off at 1,500 evaluations, and says how far off it may be', () => {
  const { states } = flight(20_000);
  let seed = 1;
  for (let i = 0; i < 20_000; i++) {
    seed = (seed * 1_664_525 + 1_013_904_223) % 2 ** 32;
    states.radialSpeed_m_s[i]! += 20 * (seed / 2 ** 32 - 0.5);
  }
  const curve = toGoCurve(problem, states);
  expect(curve.time_s.length).toBeLessThanOrEqual(1500);
  expect(curve.straightWithin_m_s).toBeGreaterThan(0.1);
});

test('one sample, or none, is no trouble', () => {
  const cut = (n: number): PlanarStates => {
    const { states } = flight(50);
    return {
      time_s: states.time_s.subarray(0, n),
      radius_m: states.radius_m.subarray(0, n),
      radialSpeed_m_s: states.radialSpeed_m_s.subarray(0, n),
      tangentialSpeed_m_s: states.tangentialSpeed_m_s.subarray(0, n),
    };
  };
  expect(toGoCurve(problem, cut(1)).toGo_m_s.length).toBe(1);
  expect(toGoCurve(problem, cut(0)).toGo_m_s.length).toBe(0);
});
