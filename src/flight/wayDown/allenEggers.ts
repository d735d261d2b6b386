/** Peak of the deceleration of a straight ballistic entry. */
export interface AllenEggersPeak {
  readonly deceleration_m_s2: number;
  readonly speed_m_s: number;
  /** Where it is felt; below zero the ground comes first. */
  readonly altitude_m: number;
}

/**
 * Ballistic entry through an exponential air on a straight path without gravity: the greatest deceleration
 * V_E² sin γ/(2eH) falls at the speed V_E/√e and at the altitude H·ln(ρ0·H/(β·sin γ)), whatever the body.
 * Source: Allen & Eggers 1958, NACA Report 1381, eqs. 13 and 15.
 *
 * @param speed_m_s at entry
 * @param angle_rad of the path under the horizontal, positive
 * @param scaleHeight_m of the air, H
 * @param groundDensity_kg_m3 ρ0
 * @param ballisticCoefficient_kg_m2 β = m/(Cd·A)
 */
export function allenEggersPeak(
  speed_m_s: number,
  angle_rad: number,
  scaleHeight_m: number,
  groundDensity_kg_m3: number,
  ballisticCoefficient_kg_m2: number,
): AllenEggersPeak {
  const sine = Math.sin(angle_rad);
  return {
    deceleration_m_s2: (speed_m_s ** 2 * sine) / (2 * Math.E * scaleHeight_m),
    speed_m_s: speed_m_s / Math.sqrt(Math.E),
    altitude_m:
      scaleHeight_m * Math.log((groundDensity_kg_m3 * scaleHeight_m) / (ballisticCoefficient_kg_m2 * sine)),
  };
}
