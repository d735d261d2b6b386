import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exponentialAtmosphere } from '../../src/world/atmosphere/exponential.ts';

const spec = {
  surfacePressure_Pa: 78_000,
  surfaceDensity_kg_m3: 1,
  scaleHeight_m: 8600,
  top_m: 110_000,
  heatCapacityRatio: 1.4,
};
const air = exponentialAtmosphere(spec, 'test');

test('pressure and density fall to 1/e over a scale height', () => {
  expect(air.at(0)).toMatchObject({ pressure_Pa: 78_000, density_kg_m3: 1 });
  expect(air.at(8600).pressure_Pa).toBeCloseTo(78_000 / Math.E, 8);
  expect(air.at(8600).density_kg_m3).toBeCloseTo(1 / Math.E, 12);
});

test('the speed of sound is √(γp/ρ) everywhere, also above the top', () => {
  const a = Math.sqrt(1.4 * 78_000);
  for (const z of [0, 50_000, 110_000, 200_000]) expect(air.at(z).soundSpeed_m_s).toBeCloseTo(a, 12);
});

test('at the top there is air, above it none', () => {
  expect(air.at(110_000).density_kg_m3).toBeGreaterThan(0);
  expect(air.at(110_001)).toMatchObject({ pressure_Pa: 0, density_kg_m3: 0 });
});

test('the pressures of a reference flight from Osselby, from an independent program', () => {
  const text = readFileSync(new URL('../flights/osselby-nominal.csv', import.meta.url), 'utf8');
  const [header = '', ...rows] = text.trim().split(/\r?\n/u);
  const columns = header.split(',');
  let worst = 0;
  for (const row of rows) {
    const cells = row.split(',').map(Number);
    const p = cells[columns.indexOf('pressure_Pa')] ?? Number.NaN;
    worst = Math.max(worst, Math.abs(air.at(cells[columns.indexOf('altitude_m')] ?? 0).pressure_Pa - p));
  }
  // Altitude is printed to 1 mm (9 mPa at the ground), pressure to 0.05 mPa.
  expect(worst).toBeLessThan(0.006);
});
