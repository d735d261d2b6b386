/** Air at one altitude. Above the top of the air pressure and density are 0. */
export interface Air {
  temperature_K: number;
  pressure_Pa: number;
  density_kg_m3: number;
  /** Speed of sound; above the top of the air the value at the top, so that a Mach number stays finite. */
  soundSpeed_m_s: number;
}

/** A model of a world's air. */
export interface Atmosphere {
  readonly model: 'us-standard-1976' | 'exponential' | 'table' | 'mars-published';
  /** Authority of the numbers, for the review. */
  readonly source: string;
  /** Geometric altitude above which there is no air. */
  readonly top_m: number;
  /** Air at a geometric altitude; writes into `into` when given (kernels), else returns a new object. */
  readonly at: (altitude_m: number, into?: Air) => Air;
}

/** A body to fly from. Spherical and uniformly rotating about its pole, unless an ellipsoid is given. */
export interface World {
  readonly name: string;
  readonly mu_m3_s2: number;
  /** Radius at which altitude is zero (spherical), and from which apsis altitudes are counted. */
  readonly radius_m: number;
  /** Spin about the pole, positive eastward; 0 for a world that does not turn. */
  readonly spin_rad_s: number;
  /** Lowest periapsis altitude that counts as an orbit. */
  readonly orbitFloor_m: number;
  readonly ellipsoid: { readonly equatorialRadius_m: number; readonly flattening: number } | null;
  readonly atmosphere: Atmosphere | null;
  /** Authority of the constants. */
  readonly source: string;
}
