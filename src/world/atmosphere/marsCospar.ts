import type { Atmosphere } from '../types.ts';
import { tableAtmosphere } from './table.ts';

/**
 * COSPAR northern-hemisphere mean model of the air of Mars: table XI of D. E. Pitts et al. (eds.), The Mars
 * Atmosphere: Observations and Model Profiles for Mars Missions, NASA JSC-24455 (1990), as Mars-GRAM prints it
 * for reference. Altitude in m, pressure in Pa, density in kg/m³. Above 100 km the rows are 10 km apart.
 */
const rows: readonly (readonly [number, number, number])[] = [
  [0, 636, 1.55e-2],
  [2000, 530, 1.3e-2],
  [4000, 441, 1.08e-2],
  [6000, 368, 9.06e-3],
  [8000, 306, 7.65e-3],
  [10000, 254, 6.47e-3],
  [12000, 209, 5.44e-3],
  [14000, 173, 4.56e-3],
  [16000, 142, 3.81e-3],
  [18000, 116, 3.17e-3],
  [20000, 94.7, 2.63e-3],
  [22000, 77, 2.18e-3],
  [24000, 62.5, 1.79e-3],
  [26000, 50.5, 1.47e-3],
  [28000, 40.7, 1.2e-3],
  [30000, 32.8, 9.8e-4],
  [32000, 26.3, 7.97e-4],
  [34000, 21, 6.47e-4],
  [36000, 16.8, 5.24e-4],
  [38000, 13.3, 4.23e-4],
  [40000, 10.6, 3.4e-4],
  [42000, 8.33, 2.72e-4],
  [44000, 6.56, 2.17e-4],
  [46000, 5.15, 1.73e-4],
  [48000, 4.03, 1.37e-4],
  [50000, 3.15, 1.08e-4],
  [52000, 2.45, 8.52e-5],
  [54000, 1.9, 6.69e-5],
  [56000, 1.47, 5.23e-5],
  [58000, 1.14, 4.09e-5],
  [60000, 0.878, 3.18e-5],
  [62000, 0.675, 2.47e-5],
  [64000, 0.519, 1.91e-5],
  [66000, 0.398, 1.48e-5],
  [68000, 0.304, 1.14e-5],
  [70000, 0.233, 8.73e-6],
  [72000, 0.178, 6.7e-6],
  [74000, 0.136, 5.12e-6],
  [76000, 0.104, 3.91e-6],
  [78000, 0.0795, 2.99e-6],
  [80000, 0.0608, 2.29e-6],
  [82000, 0.0465, 1.75e-6],
  [84000, 0.0356, 1.34e-6],
  [86000, 0.0272, 1.03e-6],
  [88000, 0.0209, 7.85e-7],
  [90000, 0.016, 6.01e-7],
  [92000, 0.0122, 4.61e-7],
  [94000, 9.39e-3, 3.53e-7],
  [96000, 7.2e-3, 2.71e-7],
  [98000, 5.52e-3, 2.08e-7],
  [100000, 4.23e-3, 1.59e-7],
  [110000, 1.19e-3, 4.14e-8],
  [120000, 3.67e-4, 1.19e-8],
  [130000, 1.23e-4, 3.76e-9],
];

/**
 * Specific gas constant that ties the table's three columns together, J/(kg K): 43.49 kg/kmol, the mean molar
 * mass that Seiff and Kirk (1977) give; p/(ρT) of the rows agrees to the table's three digits.
 */
const GAS_CONSTANT_J_KG_K = 8314.32 / 43.49;

/** cp/cv of the gas at the table's temperatures; Mars-GRAM prints 1.34 (surface) to 1.39 (70 km). */
const HEAT_CAPACITY_RATIO = 1.36;

/** Mean air of Mars, 0 to 130 km, the highest row of the table; above it none. */
export const MARS_COSPAR_MEAN: Atmosphere = tableAtmosphere(
  { rows, top_m: 130000, heatCapacityRatio: HEAT_CAPACITY_RATIO, gasConstant_J_kg_K: GAS_CONSTANT_J_KG_K },
  'COSPAR northern-hemisphere mean model of Mars (Pitts et al., NASA JSC-24455, table XI)',
  'mars-published',
);
