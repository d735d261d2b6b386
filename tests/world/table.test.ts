import { expect, test } from 'vitest';
import { exponentialAtmosphere } from '../../src/world/atmosphere/exponential.ts';
import { tableAtmosphere } from '../../src/world/atmosphere/table.ts';

const spec = {
  surfacePressure_Pa: 50_000,
  surfaceDensity_kg_m3: 0.8,
  scaleHeight_m: 7000,
  top_m: 90_000,
  heatCapacityRatio: 1.35,
};
const smooth = exponentialAtmosphere(spec, 'test');

test('a table of an exponential atmosphere is that atmosphere, between, below and above its rows', () => {
  const rows = [0, 3000, 20_000, 70_000].map((z): [number, number, number] => {
    const air = smooth.at(z);
    return [z, air.pressure_Pa, air.density_kg_m3];
  });
  const table = tableAtmosphere({ rows, top_m: 90_000, heatCapacityRatio: 1.35 }, 'test');
  for (const z of [-500, 0, 1, 3000, 12_345, 69_999, 85_000, 90_000, 90_001]) {
    const expected = smooth.at(z);
    const found = table.at(z);
    for (const key of ['temperature_K', 'pressure_Pa', 'density_kg_m3', 'soundSpeed_m_s'] as const) {
      expect(Math.abs(found[key] - expected[key]), `${key} at ${z}`).toBeLessThanOrEqual(
        1e-12 * expected[key],
      );
    }
  }
});

test('rows come out as they went in', () => {
  const table = tableAtmosphere(
    {
      rows: [
        [0, 600, 0.015],
        [10_000, 250, 0.0065],
        [50_000, 3, 1e-4],
      ],
      top_m: 60_000,
      heatCapacityRatio: 1.3,
    },
    'test',
  );
  expect(table.at(10_000).pressure_Pa).toBeCloseTo(250, 9);
  expect(table.at(10_000).density_kg_m3).toBeCloseTo(0.0065, 12);
  expect(table.at(5000).pressure_Pa).toBeCloseTo(Math.sqrt(600 * 250), 9);
});
