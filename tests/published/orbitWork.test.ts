import { describe, expect, test } from 'vitest';
import { propagate, type StateVector } from '../../src/orbit/kepler.ts';
import { weighOrbitBurn } from '../../src/orbit/orbitBurn.ts';
import { circularSpeed, speedAtApsis } from '../../src/orbit/transfers.ts';

/** Vallado 2013: Earth of examples 6-1 and 6-2. */
const mu = 3.986004418e14;
const R = 6_378_137;
const floor = R + 120_000;

/** State on the x axis with a speed in a direction, `turned` out of the first plane, rad. */
function at(radius_m: number, speed_m_s: number, turned = 0): StateVector {
  return {
    position_m: [radius_m, 0, 0],
    velocity_m_s: [0, speed_m_s * Math.cos(turned), speed_m_s * Math.sin(turned)],
  };
}

/** An impulse at a radius from one speed to another. */
function impulse(radius_m: number, from: number, to: number, turned = 0) {
  return weighOrbitBurn(mu, floor, at(radius_m, from), at(radius_m, to, turned), 0);
}

describe('published transfers as burns in orbit', () => {
  test('Hohmann, Vallado example 6-1: 3.935224 km/s in two burns, none wasted', () => {
    const [low, high] = [R + 191_344.11, R + 35_781_348.57];
    const first = impulse(low, circularSpeed(mu, low), speedAtApsis(mu, low, high));
    const second = impulse(high, speedAtApsis(mu, high, low), circularSpeed(mu, high));
    expect(first.impulse_m_s + second.impulse_m_s).toBeCloseTo(3935.224, 2);
    expect(first.kind).toBe('raise');
    expect(second.kind).toBe('circularise');
    expect(first.best!.deltaV_m_s).toBeCloseTo(first.impulse_m_s, 6);
    expect(second.best!.deltaV_m_s).toBeCloseTo(second.impulse_m_s, 6);
    expect(second.bestAt).toBe('apoapsis');
    expect(Math.abs(second.trueAnomaly_rad!)).toBeCloseTo(Math.PI, 9);
  });

  test('bi-elliptic, Vallado example 6-2: 3.904057 km/s in three burns, none wasted', () => {
    const [low, turn, goal] = [R + 191_344.11, R + 503_873_000, R + 376_310_000];
    const burns = [
      impulse(low, circularSpeed(mu, low), speedAtApsis(mu, low, turn)),
      impulse(turn, speedAtApsis(mu, turn, low), speedAtApsis(mu, turn, goal)),
      impulse(goal, speedAtApsis(mu, goal, turn), circularSpeed(mu, goal)),
    ];
    expect(burns.reduce((sum, b) => sum + b.impulse_m_s, 0)).toBeCloseTo(3904.057, 2);
    expect(burns.map((b) => b.kind)).toEqual(['raise', 'raise', 'circularise']);
    for (const b of burns) expect(b.best!.deltaV_m_s / b.impulse_m_s).toBeCloseTo(1, 6);
  });

  // Weber, orbital mechanics notes: 300 km (Re 6378.1), 28.6°, 42,164 km, mu 3.986e5.
  test('plane turned with the burn at geostationary height: 4.258218 km/s with the transfer', () => {
    const m = 3.986e14;
    const [low, high] = [6_678_100, 42_164_000];
    const turned = (28.6 * Math.PI) / 180;
    const first = weighOrbitBurn(
      m,
      floor,
      at(low, circularSpeed(m, low)),
      at(low, speedAtApsis(m, low, high)),
      0,
    );
    const second = weighOrbitBurn(
      m,
      floor,
      at(high, speedAtApsis(m, high, low)),
      at(high, circularSpeed(m, high), turned),
      0,
    );
    expect((first.impulse_m_s + second.impulse_m_s) / 1000).toBeCloseTo(4.258218, 6);
    expect(second.planeAngle_rad).toBeCloseTo(turned, 12);
    expect(second.kind).toBe('circularise');
    // From the ellipse nothing is cheaper than all of it up there.
    expect(second.best!.deltaV_m_s).toBeLessThanOrEqual(second.impulse_m_s + 1e-6);
    expect(second.best!.deltaV_m_s / second.impulse_m_s).toBeGreaterThan(0.98);
  });

  test('the same turn in low orbit costs 6.469167 − 3.892567 km/s more than none', () => {
    const m = 3.986e14;
    const [low, high] = [6_678_100, 42_164_000];
    const turned = (28.6 * Math.PI) / 180;
    const first = weighOrbitBurn(
      m,
      floor,
      at(low, circularSpeed(m, low)),
      at(low, speedAtApsis(m, low, high), turned),
      0,
    );
    const second = circularSpeed(m, high) - speedAtApsis(m, high, low);
    expect((first.impulse_m_s + second) / 1000).toBeCloseTo(6.469167, 6);
  });
});

describe('a burn off its place', () => {
  test('costs more than the optimum, the more the farther from the apsis', () => {
    const [low, high] = [R + 200_000, R + 2_000_000];
    const start = at(low, speedAtApsis(mu, low, high));
    const half = Math.PI * Math.sqrt((0.5 * (low + high)) ** 3 / mu);
    const losses = [0, 200, 400, 600].map((early) => {
      const before = propagate(mu, start, half - early);
      const speed = Math.hypot(...before.velocity_m_s);
      const after: StateVector = {
        position_m: before.position_m,
        velocity_m_s: before.velocity_m_s.map((v) => v * (1 + 300 / speed)) as [number, number, number],
      };
      const weighed = weighOrbitBurn(mu, floor, before, after, 0);
      return weighed.impulse_m_s - weighed.best!.deltaV_m_s;
    });
    expect(losses[0]!).toBeCloseTo(0, 3);
    for (let k = 1; k < losses.length; k++) expect(losses[k]!).toBeGreaterThan(losses[k - 1]! + 1);
  });

  test('deorbit, trim and plane change are told apart', () => {
    const r = R + 300_000;
    const v = circularSpeed(mu, r);
    expect(impulse(r, v, v - 120).kind).toBe('deorbit');
    expect(impulse(r, v, v + 1).kind).toBe('trim');
    expect(impulse(r, v, v, 0.02).kind).toBe('plane-change');
    expect(impulse(r, v, 1.5 * v).kind).toBe('escape');
    expect(
      impulse(R + 900_000, circularSpeed(mu, R + 900_000), circularSpeed(mu, R + 900_000) - 60).kind,
    ).toBe('lower');
  });
});
