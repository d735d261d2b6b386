import { describe, expect, test } from 'vitest';
import {
  cross,
  dot,
  propagate,
  type StateVector,
  timeToApsis,
  timeToRadius,
} from '../../src/orbit/kepler.ts';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';

const mu = 3.986004418e14;
const radius = 6_700_000;
const parabolic = Math.sqrt((2 * mu) / radius);

const starts: readonly (readonly [string, number, number])[] = [
  ['circle', 0, Math.sqrt(mu / radius)],
  ['ellipse', 900, 8200],
  ['long ellipse', 3000, 0.9 * parabolic],
  ['nearly a parabola', 0, parabolic * (1 - 1e-12)],
  ['parabola', 0, parabolic],
  ['hyperbola', -2000, 13_000],
  ['straight rise', 4000, 0],
];

/** The planar state tilted out of the coordinate planes. */
function inSpace(up: number, along: number): StateVector {
  const c = Math.cos(0.7);
  const s = Math.sin(0.7);
  return { position_m: [radius * c, 0, radius * s], velocity_m_s: [up * c, along, up * s] };
}

describe.each(starts)('%s', (_, up, along) => {
  const start = inSpace(up, along);

  test('energy and angular momentum are kept', () => {
    for (const time of [-900, -1, 3, 700]) {
      const end = propagate(mu, start, time);
      const energy = (s: StateVector) =>
        dot(s.velocity_m_s, s.velocity_m_s) / 2 - mu / Math.hypot(...s.position_m);
      // A few roundings of the kinetic energy, measured 3e-15 of it.
      expect(Math.abs(energy(end) - energy(start))).toBeLessThan(2e-14 * (mu / radius) * 10);
      const [before, after] = [start, end].map((s) => cross(s.position_m, s.velocity_m_s));
      for (let i = 0; i < 3; i++)
        expect(Math.abs((after?.[i] ?? 0) - (before?.[i] ?? 0))).toBeLessThan(1e-13 * radius * parabolic);
    }
  });

  test('there and back again, in one step or in many', () => {
    const there = propagate(mu, start, 800);
    const back = propagate(mu, there, -800);
    for (let i = 0; i < 3; i++)
      expect(Math.abs((back.position_m[i] ?? 0) - (start.position_m[i] ?? 0))).toBeLessThan(1e-5);
    let stepped = start;
    for (let k = 0; k < 8; k++) stepped = propagate(mu, stepped, 100);
    for (let i = 0; i < 3; i++)
      expect(Math.abs((stepped.position_m[i] ?? 0) - (there.position_m[i] ?? 0))).toBeLessThan(1e-5);
  });
});

test.each(starts.slice(1))('%s: the time to a radius is when it is there', (_, up, along) => {
  const { position_m, velocity_m_s } = propagate(mu, inSpace(up, along), 400);
  const way = dot(position_m, velocity_m_s) > 0 ? 'rising' : 'falling';
  expect(timeToRadius(mu, radius, up, along, Math.hypot(...position_m), way)).toBeCloseTo(400, 6);
});

describe('times to apsides', () => {
  test('half a period apart; nothing radial there', () => {
    const period = orbitFromPlanarState(mu, radius, 900, 8200).period_s ?? 0;
    const up = timeToApsis(mu, radius, 900, 8200, 'apoapsis') ?? 0;
    const down = timeToApsis(mu, radius, 900, 8200, 'periapsis') ?? 0;
    expect(down - up).toBeCloseTo(period / 2, 6);
    const top = propagate(mu, inSpace(900, 8200), up);
    expect(dot(top.position_m, top.velocity_m_s) / radius).toBeCloseTo(0, 7);
  });

  test('a straight rise stops after the time of free fall', () => {
    const time = timeToApsis(mu, radius, 10, 0, 'apoapsis') ?? 0;
    const gravity = mu / radius ** 2;
    // v/g(1 + 2v²/(3 g r)): the next term is of order (v²/gr)².
    expect(time / ((10 / gravity) * (1 + (2 * 100) / (3 * gravity * radius)))).toBeCloseTo(1, 9);
  });

  test('what never comes is null', () => {
    expect(timeToApsis(mu, radius, 100, 13_000, 'apoapsis')).toBeNull();
    expect(timeToApsis(mu, radius, 100, 13_000, 'periapsis')).toBeNull();
    expect(timeToRadius(mu, radius, 0, 7000, radius * 2, 'rising')).toBeNull();
    expect(timeToRadius(mu, radius, 100, 13_000, radius * 0.99, 'falling')).toBeNull();
  });
});
