import { expect, test } from 'vitest';
import { MARS_COSPAR_MEAN as air } from '../../src/world/atmosphere/marsCospar.ts';

// Temperatures of the COSPAR northern-hemisphere mean model (Pitts et al., NASA JSC-24455, table XI), which the
// model here does not hold: it makes them from the pressures and densities of the same table.
const temperatures: [number, number][] = [
  [0, 214],
  [2, 213.8],
  [4, 213.4],
  [6, 212.4],
  [8, 209.2],
  [10, 205],
  [12, 201.4],
  [14, 197.8],
  [16, 194.6],
  [18, 191.5],
  [20, 188.3],
  [24, 182.5],
  [28, 177.5],
  [32, 172.5],
  [36, 167.5],
  [40, 162.4],
  [44, 158],
  [48, 154.1],
  [52, 150.3],
  [56, 147.2],
  [60, 144.2],
  [64, 142],
  [68, 140],
  [70, 139.5],
  [74, 139],
  [80, 139],
  [86, 139],
  [90, 139],
  [96, 139],
  [100, 139],
  [110, 149.4],
  [120, 159.7],
  [130, 170],
];

test('temperature, pressure and density of the table go together', () => {
  for (const [z, t] of temperatures) {
    // Three printed digits of p and of ρ leave up to 0.8 %; measured 0.62 % at most up to 100 km, 1.01 % above,
    // where the gas begins to part and is no longer of one molar mass.
    expect(Math.abs(air.at(z * 1000).temperature_K / t - 1), `${z} km`).toBeLessThan(
      z <= 100 ? 7e-3 : 1.2e-2,
    );
  }
});

test('hydrostatic balance with the gravity of Mars between rows', () => {
  for (let z = 1000; z < 100_000; z += 2000) {
    const fall = Math.log(air.at(z - 1000).pressure_Pa / air.at(z + 1000).pressure_Pa) / 2000;
    const g = 4.282837362069909e13 / (3396190 + z) ** 2;
    const { pressure_Pa, density_kg_m3 } = air.at(z);
    // Measured at most 2.7 %: three digits in a difference of neighbouring rows.
    expect(Math.abs((fall * pressure_Pa) / (density_kg_m3 * g) - 1), `${z} m`).toBeLessThan(0.03);
  }
});

test('above 130 km none', () => {
  expect(air.at(130_001)).toMatchObject({ pressure_Pa: 0, density_kg_m3: 0 });
  expect(air.at(130_000).density_kg_m3).toBeCloseTo(3.76e-9, 15);
});
