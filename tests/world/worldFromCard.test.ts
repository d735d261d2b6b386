import { expect, test } from 'vitest';
import { worldFromCard } from '../../src/world/worldFromCard.ts';

const osselby = {
  name: 'Osselby',
  gravitationalParameter_m3_s2: 6.8231e13,
  radius_m: 3.1e6,
  rotationPeriod_s: 52_000,
};
const exponential = {
  model: 'exponential',
  surfacePressure_Pa: 78_000,
  surfaceDensity_kg_m3: 1,
  scaleHeight_m: 8600,
} as const;

test('what is given is taken, the floor is the top of the air', () => {
  const { world, assumed } = worldFromCard({
    ...osselby,
    atmosphere: { ...exponential, top_m: 110_000, heatCapacityRatio: 1.4 },
  });
  expect(world).toMatchObject({
    name: 'Osselby',
    mu_m3_s2: 6.8231e13,
    radius_m: 3.1e6,
    orbitFloor_m: 110_000,
  });
  expect(world.spin_rad_s).toBeCloseTo((2 * Math.PI) / 52_000, 18);
  expect(assumed).toEqual(['The orbit floor of Osselby is taken to be the top of its air.']);
});

test('surface gravity may stand for the gravitational parameter', () => {
  const { world } = worldFromCard({ radius_m: 2e6, surfaceGravity_m_s2: 3 });
  expect(world.mu_m3_s2).toBe(1.2e13);
});

test('gravity and parameter must agree', () => {
  expect(() => worldFromCard({ ...osselby, surfaceGravity_m_s2: 9.8 })).toThrow(
    'world.surfaceGravity_m_s2 = 9.8',
  );
  expect(() => worldFromCard({ ...osselby, surfaceGravity_m_s2: 7.1 })).not.toThrow();
});

test('a radius and a gravity are needed', () => {
  expect(() => worldFromCard({ radius_m: 1e6 })).toThrow('world.gravitationalParameter_m3_s2');
  expect(() => worldFromCard({ surfaceGravity_m_s2: 3 })).toThrow('world.radius_m');
});

test('everything left out is an assumption that is said', () => {
  const { world, assumed } = worldFromCard({ radius_m: 1e6, surfaceGravity_m_s2: 2 });
  expect(world).toMatchObject({ spin_rad_s: 0, orbitFloor_m: 0, atmosphere: null });
  expect(assumed).toHaveLength(3);
  const airy = worldFromCard({ ...osselby, atmosphere: exponential });
  expect(airy.world.atmosphere?.top_m).toBe(129_000);
  expect(airy.assumed).toHaveLength(3);
});

test('a westward turn has a negative spin; no air that is said is no assumption', () => {
  const { world, assumed } = worldFromCard({
    ...osselby,
    rotationPeriod_s: -1e5,
    atmosphere: null,
    orbitFloor_m: 5000,
  });
  expect(world.spin_rad_s).toBeLessThan(0);
  expect(assumed).toEqual([]);
});

test('the standard atmosphere brings the floor of 120 km; a table ends at its last row', () => {
  expect(worldFromCard({ ...osselby, atmosphere: { model: 'us-standard-1976' } }).world.orbitFloor_m).toBe(
    120_000,
  );
  const rows = [
    [0, 500, 0.01],
    [40_000, 5, 1e-4],
  ] as const;
  expect(worldFromCard({ ...osselby, atmosphere: { model: 'table', rows } }).world.atmosphere?.top_m).toBe(
    40_000,
  );
});
