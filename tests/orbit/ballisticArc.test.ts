import { describe, expect, test } from 'vitest';
import { BallisticArc } from '../../src/orbit/ballisticArc.ts';

describe('BallisticArc', () => {
  test.each([
    ['suborbital, rising', 0.3, 0.6, 0.99],
    ['suborbital, falling', -0.1, 0.7, 0.98],
    ['straight up', 0.5, 0, 1],
    ['whole turn', 0.1, 1.05, 0.8],
    ['hyperbola, outward', 0.4, 1.5, 0.9],
    ['hyperbola, inward to the floor', -1.4, 0.6, 0.9],
  ])('%s: never below its floor, energy and momentum kept, ends where it should', (_, up, along, floor) => {
    const arc = new BallisticArc(up, along, floor, 50);
    const energy = (up * up + along * along) / 2 - 1;
    for (let k = 0; k <= 50; k++) {
      arc.moveTo((arc.end * k) / 50);
      expect(arc.radius).toBeGreaterThan(floor * (1 - 1e-12));
      const { radius, radialSpeed, tangentialSpeed } = arc;
      // Far out on a hyperbola terms of size e^χ cancel: measured 3e-13.
      expect((radialSpeed ** 2 + tangentialSpeed ** 2) / 2 - 1 / radius).toBeCloseTo(energy, 11);
      expect(radius * tangentialSpeed).toBeCloseTo(along, 13);
    }
    arc.moveTo(arc.end);
    if (arc.periapsis < floor && !(arc.alpha <= 0 && up > 0)) expect(arc.radius).toBeCloseTo(floor, 11);
    else expect(arc.radius).toBeCloseTo(arc.alpha > 0 ? 1 : 50, 8);
  });

  test('at or below its floor and falling there is no arc left', () => {
    expect(new BallisticArc(-0.1, 0.8, 1, 50).end).toBe(0);
  });

  test('passages and apsides lie where they say', () => {
    const arc = new BallisticArc(0.2, 1.02, 0.7, 50);
    for (const radius of [1.1, 0.95, 1.3]) {
      const at = arc.passages(radius);
      expect(at.length).toBe(radius > arc.apoapsis || radius < arc.periapsis ? 0 : 2);
      for (const chi of at) {
        arc.moveTo(chi);
        expect(arc.radius).toBeCloseTo(radius, 13);
      }
    }
    const apsides = arc.apsides();
    expect(apsides.length).toBe(2);
    for (const chi of apsides) {
      arc.moveTo(chi);
      expect(arc.radialSpeed).toBeCloseTo(0, 13);
    }
    expect(arc.passages(arc.apoapsis * 1.01)).toEqual([]);
  });

  test('the time of a whole turn is the period', () => {
    const arc = new BallisticArc(0.2, 1.02, 0.5, 50);
    expect(arc.timeAt(arc.end)).toBeCloseTo(2 * Math.PI * arc.alpha ** -1.5, 12);
  });
});
