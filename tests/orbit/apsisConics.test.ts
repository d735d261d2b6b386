import { describe, expect, test } from 'vitest';
import { ApsisConics, conicPlaces } from '../../src/orbit/apsisConics.ts';
import { orbitFromPlanarState } from '../../src/orbit/planar.ts';

const limits = { floor: 0.9, excess: 0.3 };

describe('ApsisConics', () => {
  test.each([
    [1, 1.4, true],
    [1, 0.93, false],
    [1.2, 1.2000001, true],
  ])(
    'from radius %d every conic has its apsis at %d, and keeps the promises about the floor',
    (radius, apsis, outer) => {
      const conics = new ApsisConics();
      for (const clear of [false, true]) {
        conics.prepare(radius, apsis, limits, outer, clear);
        for (const place of [-1, -0.6, -0.01, 0, 0.01, 0.6, 1]) {
          conics.choose(place);
          const { radialSpeed, tangentialSpeed, apsisSpeed } = conics;
          expect(Math.sign(radialSpeed) * Math.sign(place)).toBeGreaterThanOrEqual(0);
          const orbit = orbitFromPlanarState(1, radius, radialSpeed, tangentialSpeed);
          const { periapsisRadius_m: low, apoapsisRadius_m: high } = orbit;
          const nearest = Math.min(Math.abs(low - apsis), Math.abs(high - apsis));
          expect(nearest).toBeLessThan(1e-9);
          expect(apsisSpeed * apsis).toBeCloseTo(tangentialSpeed * radius, 13);
          if (place < 0 || clear) expect(low).toBeGreaterThan(limits.floor - 1e-9);
        }
      }
    },
  );

  test('the level conic is Hohmann’s', () => {
    const conics = new ApsisConics();
    conics.prepare(1, 2, limits, true, false);
    conics.choose(0);
    expect(conics.radialSpeed).toBe(0);
    // Speeds of the ellipse from 1 to 2: √(4/3) and half of it.
    expect(conics.tangentialSpeed).toBeCloseTo(Math.sqrt(4 / 3), 14);
    expect(conics.apsisSpeed).toBeCloseTo(Math.sqrt(1 / 3), 14);
  });
});

test('places run from −1 through 0 to 1, closest about 0', () => {
  expect([...conicPlaces(2, 4)]).toEqual([-1, -0.25, 0, 0.0625, 0.25, 0.5625, 1]);
});
