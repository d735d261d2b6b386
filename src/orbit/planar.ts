/** The osculating conic of a state in its own plane. */
export interface PlanarOrbit {
  /** Half the distance between the apsides; negative for a hyperbola, Infinity for a parabola. */
  readonly semiMajorAxis_m: number;
  readonly eccentricity: number;
  /** Infinity when unbound. */
  readonly apoapsisRadius_m: number;
  readonly periapsisRadius_m: number;
  /** Null when unbound: such a path has no period. */
  readonly period_s: number | null;
  /** Specific orbital energy, J/kg; negative when bound. */
  readonly energy_J_kg: number;
  /** Specific angular momentum, m²/s, never negative. */
  readonly angularMomentum_m2_s: number;
}

/**
 * Two-body orbit through a state given by distance and velocity components.
 *
 * The eccentricity is formed from the two components of its vector along and across the radius, not from
 * `1 − p/a`, so that it keeps its digits down to circular orbits, and each apsis follows from whichever of
 * `p/(1 ± e)` and the energy does not cancel.
 *
 * @param mu_m3_s2 gravitational parameter, > 0
 * @param radius_m distance from the world's centre, > 0
 * @param radialSpeed_m_s inertial speed away from the centre
 * @param tangentialSpeed_m_s inertial speed across the radius, either sign
 * Source: Bate, Mueller & White 1971, §1.4–1.6; eccentricity vector eq. 1.5-11.
 */
export function orbitFromPlanarState(
  mu_m3_s2: number,
  radius_m: number,
  radialSpeed_m_s: number,
  tangentialSpeed_m_s: number,
): PlanarOrbit {
  const unit = Math.sqrt(mu_m3_s2 / radius_m);
  const u = radialSpeed_m_s / unit;
  const w = tangentialSpeed_m_s / unit;
  // In units of the radius and the circular speed there: p = w², e along the radius = w² − 1, across it = −u w.
  const p = w * w;
  const eccentricity = Math.hypot((w - 1) * (w + 1), u * w);
  // r/a (vis viva); zero for a parabola.
  const alpha = 2 - u * u - p;
  const bound = alpha > 0;
  const periapsis = p / (1 + eccentricity);
  return {
    semiMajorAxis_m: alpha === 0 ? Number.POSITIVE_INFINITY : radius_m / alpha,
    eccentricity,
    apoapsisRadius_m: bound ? (radius_m * (1 + eccentricity)) / alpha : Number.POSITIVE_INFINITY,
    periapsisRadius_m: radius_m * periapsis,
    period_s: bound ? ((2 * Math.PI * radius_m) / unit) * alpha ** -1.5 : null,
    energy_J_kg: -0.5 * unit * unit * alpha,
    angularMomentum_m2_s: radius_m * Math.abs(tangentialSpeed_m_s),
  };
}
