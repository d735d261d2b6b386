import type { Air, Atmosphere } from '../types.ts';

/** What an exponential atmosphere is made from, SI. */
export interface ExponentialSpec {
  readonly surfacePressure_Pa: number;
  readonly surfaceDensity_kg_m3: number;
  /** Altitude over which pressure and density fall to 1/e. */
  readonly scaleHeight_m: number;
  /** Altitude above which there is no air. */
  readonly top_m: number;
  /** cp/cv. */
  readonly heatCapacityRatio: number;
}

/** Specific gas constant of the U.S. Standard Atmosphere's air, J/(kg K): gives temperature a scale. */
export const STANDARD_AIR_GAS_CONSTANT_J_KG_K = 8314.32 / 28.9644;

/**
 * An isothermal atmosphere: p and ρ fall alike, `p = p₀ exp(−h/H)`, and the speed of sound `√(γ p₀/ρ₀)` is the
 * same everywhere. Temperature is that of air as on Earth with this p/ρ; nothing else leans on it.
 */
export function exponentialAtmosphere(spec: ExponentialSpec, source: string): Atmosphere {
  const { surfacePressure_Pa, surfaceDensity_kg_m3, scaleHeight_m, top_m, heatCapacityRatio } = spec;
  const ratio = surfacePressure_Pa / surfaceDensity_kg_m3;
  const soundSpeed_m_s = Math.sqrt(heatCapacityRatio * ratio);
  const temperature_K = ratio / STANDARD_AIR_GAS_CONSTANT_J_KG_K;
  return {
    model: 'exponential',
    source,
    top_m,
    at: (altitude_m: number, into?: Air): Air => {
      const air = into ?? { temperature_K: 0, pressure_Pa: 0, density_kg_m3: 0, soundSpeed_m_s: 0 };
      const part = altitude_m > top_m ? 0 : Math.exp(-altitude_m / scaleHeight_m);
      air.temperature_K = temperature_K;
      air.pressure_Pa = surfacePressure_Pa * part;
      air.density_kg_m3 = surfaceDensity_kg_m3 * part;
      air.soundSpeed_m_s = soundSpeed_m_s;
      return air;
    },
  };
}
