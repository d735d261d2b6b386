import type { Air, Atmosphere } from '../types.ts';
import { UPPER_BASE_KM, upperPressureAndDensity, upperTemperature_K } from './usStandard1976Upper.ts';

// Constants of the standard (NASA-TM-X-74335, tables 1 to 4); older than today's values, and part of it.
const EARTH_RADIUS_M = 6356766;
/** g0′·M0/R*, K per geopotential metre. */
const HYDROSTATIC_K_M = (9.80665 * 28.9644) / 8314.32;
/** Specific gas constant of mixed air, J/(kg K). */
const GAS_CONSTANT_J_KG_K = 8314.32 / 28.9644;
const HEAT_CAPACITY_RATIO = 1.4;
const TOP_M = 1e6;
const UPPER_BASE_M = UPPER_BASE_KM * 1000;
/** Where molecules start to part, m geometric: below it kinetic and molecular-scale temperature are the same. */
const MIXED_TO_M = 80000;

/** Geopotential base altitudes, m, and lapse rates of molecular-scale temperature, K/m (table 4). */
const bases = Float64Array.of(0, 11000, 20000, 32000, 47000, 51000, 71000);
const lapses = Float64Array.of(-0.0065, 0, 0.001, 0.0028, 0, -0.0028, -0.002);
const baseTemperatures = new Float64Array(7);
const basePressures = new Float64Array(7);

/** M/M0 at 80, 80.5 … 86 km geometric (table 8). */
const molarMassRatios = Float64Array.of(
  1,
  0.999996,
  0.999989,
  0.999971,
  0.999941,
  0.999909,
  0.99987,
  0.999829,
  0.999786,
  0.999741,
  0.999694,
  0.999641,
  0.999579,
);

/** Pressure in layer `b` (eqs. 33a and 33b); temperature is molecular-scale. */
function layerPressure(b: number, h: number, temperature: number): number {
  const lapse = lapses[b]!;
  return lapse === 0
    ? basePressures[b]! * Math.exp((-HYDROSTATIC_K_M * (h - bases[b]!)) / temperature)
    : basePressures[b]! * (baseTemperatures[b]! / temperature) ** (HYDROSTATIC_K_M / lapse);
}

baseTemperatures[0] = 288.15;
basePressures[0] = 101325;
for (let b = 1; b < 7; b++) {
  baseTemperatures[b] = baseTemperatures[b - 1]! + lapses[b - 1]! * (bases[b]! - bases[b - 1]!);
  basePressures[b] = layerPressure(b - 1, bases[b]!, baseTemperatures[b]!);
}

/** Geopotential altitude of a geometric one, m (eq. 18). */
export function geopotential_m(altitude_m: number): number {
  return (EARTH_RADIUS_M * altitude_m) / (EARTH_RADIUS_M + altitude_m);
}

function molarMassRatio(altitude_m: number): number {
  const place = (altitude_m - MIXED_TO_M) / 500;
  const i = Math.min(Math.floor(place), 11);
  return molarMassRatios[i]! + (place - i) * (molarMassRatios[i + 1]! - molarMassRatios[i]!);
}

function below86km(altitude_m: number, air: Air): void {
  const h = geopotential_m(altitude_m);
  let b = 6;
  while (b > 0 && h < bases[b]!) b--;
  const temperature = baseTemperatures[b]! + lapses[b]! * (h - bases[b]!);
  air.pressure_Pa = layerPressure(b, h, temperature);
  air.density_kg_m3 = air.pressure_Pa / (GAS_CONSTANT_J_KG_K * temperature);
  air.soundSpeed_m_s = Math.sqrt(HEAT_CAPACITY_RATIO * GAS_CONSTANT_J_KG_K * temperature);
  air.temperature_K =
    altitude_m <= MIXED_TO_M ? temperature : temperature * molarMassRatio(Math.min(altitude_m, UPPER_BASE_M));
}

/**
 * Air of the U.S. Standard Atmosphere, 1976, at a geometric altitude in m: the layers downward without end
 * below the sea, nothing above 1000 km. Temperature is kinetic. The standard gives no speed of sound above
 * 86 km; √(1.4 p/ρ) carries it on, so that a Mach number stays finite.
 */
function at(altitude_m: number, into?: Air): Air {
  const air = into ?? { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 };
  if (altitude_m < UPPER_BASE_M) {
    below86km(altitude_m, air);
    return air;
  }
  const z_km = Math.min(altitude_m, TOP_M) / 1000;
  upperPressureAndDensity(z_km, air);
  air.temperature_K = upperTemperature_K(z_km);
  air.soundSpeed_m_s = Math.sqrt((HEAT_CAPACITY_RATIO * air.pressure_Pa) / air.density_kg_m3);
  if (altitude_m > TOP_M) {
    air.pressure_Pa = 0;
    air.density_kg_m3 = 0;
  }
  return air;
}

/** U.S. Standard Atmosphere, 1976 (NASA-TM-X-74335), 0 to 1000 km geometric. */
export const US_STANDARD_ATMOSPHERE_1976: Atmosphere = {
  model: 'us-standard-1976',
  source: 'U.S. Standard Atmosphere, 1976 (NOAA, NASA, USAF; NASA-TM-X-74335)',
  top_m: TOP_M,
  at,
};
