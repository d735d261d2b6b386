import type { Air, Atmosphere } from '../types.ts';
import { STANDARD_AIR_GAS_CONSTANT_J_KG_K } from './exponential.ts';

/** What an atmosphere by table is made from. */
export interface TableSpec {
  /** Altitude in m (rising), pressure in Pa, density in kg/m³, both above zero. At least two rows. */
  readonly rows: readonly (readonly [altitude_m: number, pressure_Pa: number, density_kg_m3: number])[];
  /** Altitude above which there is no air. */
  readonly top_m: number;
  /** cp/cv. */
  readonly heatCapacityRatio: number;
  /** J/(kg K), for the temperature alone; air as on Earth where it is not given. */
  readonly gasConstant_J_kg_K?: number;
}

/**
 * An atmosphere by table: between rows the logarithms of pressure and density run straight (each layer has one
 * scale height); below the first and above the last row the nearest layer goes on, up to the top.
 */
export function tableAtmosphere(
  spec: TableSpec,
  source: string,
  model: 'table' | 'mars-published' = 'table',
): Atmosphere {
  const { rows, top_m, heatCapacityRatio } = spec;
  const gasConstant = spec.gasConstant_J_kg_K ?? STANDARD_AIR_GAS_CONSTANT_J_KG_K;
  const altitudes = Float64Array.from(rows, (row) => row[0]);
  const lnPressures = Float64Array.from(rows, (row) => Math.log(row[1]));
  const lnDensities = Float64Array.from(rows, (row) => Math.log(row[2]));
  const last = altitudes.length - 2;
  return {
    model,
    source,
    top_m,
    at: (altitude_m: number, into?: Air): Air => {
      const air = into ?? { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 };
      const h = Math.min(altitude_m, top_m);
      let low = 0;
      let high = last;
      while (low < high) {
        const middle = (low + high + 1) >> 1;
        if (altitudes[middle]! <= h) low = middle;
        else high = middle - 1;
      }
      const part = (h - altitudes[low]!) / (altitudes[low + 1]! - altitudes[low]!);
      const lnPressure = lnPressures[low]! + part * (lnPressures[low + 1]! - lnPressures[low]!);
      const lnDensity = lnDensities[low]! + part * (lnDensities[low + 1]! - lnDensities[low]!);
      const ratio = Math.exp(lnPressure - lnDensity);
      air.temperature_K = ratio / gasConstant;
      air.soundSpeed_m_s = Math.sqrt(heatCapacityRatio * ratio);
      air.pressure_Pa = altitude_m > top_m ? 0 : Math.exp(lnPressure);
      air.density_kg_m3 = altitude_m > top_m ? 0 : Math.exp(lnDensity);
      return air;
    },
  };
}
