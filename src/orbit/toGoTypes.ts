/** What is to be reached. Radii from the world's centre. */
export type ToGoTarget =
  | { readonly kind: 'orbit'; readonly apoapsisRadius_m: number; readonly periapsisRadius_m: number }
  | { readonly kind: 'suborbital'; readonly peakRadius_m: number }
  | { readonly kind: 'escape'; readonly c3_m2_s2: number };

/** A world and a target in it. `floorRadius_m` is the radius of the orbit floor, below which no arc may run. */
export interface ToGoProblem {
  readonly mu_m3_s2: number;
  readonly floorRadius_m: number;
  readonly target: ToGoTarget;
}

/** An inertial state in its own plane. The sign of the tangential speed does not matter. */
export interface PlanarState {
  readonly radius_m: number;
  readonly radialSpeed_m_s: number;
  readonly tangentialSpeed_m_s: number;
}

/** How many impulses the cheapest way has. */
export type ToGoRoute = 'none' | 'one-impulse' | 'two-impulse' | 'three-impulse';

/** Delta-v to go, and the way that costs it. */
export interface ToGo {
  readonly deltaV_m_s: number;
  readonly route: ToGoRoute;
  /** The impulses in their order; together they make `deltaV_m_s`. */
  readonly impulses_m_s: readonly number[];
  /** Coast before the first impulse; 0 when there is none to fire. */
  readonly coast_s: number;
  readonly firstImpulseNow: boolean;
}
