import type { OrbitBurnKind } from '../../orbit/orbitBurn.ts';
import type { Figure, OrbitFigures } from '../types.ts';

/** A burn after the ascent, weighed against the impulses that would have done the same. */
export interface OrbitWorkBurn {
  readonly start_s: number;
  readonly end_s: number;
  readonly stage: string;
  readonly kind: OrbitBurnKind;
  /** Vacuum delta-v spent, m/s. */
  readonly deltaV_m_s: Figure;
  /** The cheapest impulses to what it was for: the apsis that it moved (both where both), the plane’s turn, m/s. */
  readonly optimum_m_s: Figure;
  /** Optimum over spent: 1 = nothing wasted. */
  readonly efficiency: Figure;
  /** What it cost that it was made there, that way and so long: the impulse that does the same less optimum, m/s. */
  readonly placeLoss_m_s: Figure;
  /** What it cost that the burn took time: spent less that impulse, m/s. */
  readonly finiteBurnLoss_m_s: Figure;
  /** Where on the orbit its middle lay, degrees from periapsis (−180 to 180); null on a circle. */
  readonly trueAnomaly_deg: number | null;
  /** Apsis where the optimum begins; null on a circle, where every place serves alike. */
  readonly bestAt: 'periapsis' | 'apoapsis' | null;
  /** True where the optimum takes a second impulse at the other end of the transfer. */
  readonly twoImpulses: boolean;
  readonly planeChange_deg: Figure;
  readonly apoapsisBefore_m: number | null;
  readonly periapsisBefore_m: number;
  readonly apoapsisAfter_m: number | null;
  readonly periapsisAfter_m: number;
  /** One sentence for people. */
  readonly text: string;
}

/** One line of the orbit's history: what it was from a moment on. */
export interface OrbitHistoryRow {
  readonly time_s: number;
  /** What led to it: `ascent`, or the kind of the burn. */
  readonly after: string;
  readonly orbit: OrbitFigures;
}

/** Work in orbit: burns after the ascent, and the orbits that they led to. Empty for flights without. */
export interface OrbitWork {
  readonly burns: readonly OrbitWorkBurn[];
  readonly history: readonly OrbitHistoryRow[];
  /** Sum of the burns' delta-v, and of what impulses would have needed, m/s. */
  readonly deltaV_m_s: Figure;
  readonly optimum_m_s: Figure;
}
