import type { ConicLimits } from './apsisConics.ts';
import type { BallisticArc } from './ballisticArc.ts';

/** Farthest turning point that is looked at, in units of the present radius or the target's apoapsis. */
export const FARTHEST = 100;

/** Points along a ballistic arc at which ways are tried before the best are refined. */
export interface ArcGrid extends ConicLimits {
  readonly arc: BallisticArc;
  readonly chi: Float64Array;
  readonly radius: Float64Array;
  readonly radialSpeed: Float64Array;
  readonly tangentialSpeed: Float64Array;
  /** Values of χ that part the arc where it passes the target's apsides; first 0, last the arc's end. */
  readonly parts: readonly number[];
}

/** Places even points on the arc, and its ends, its apsides and its passages of the radii given. */
export function arcGrid(arc: BallisticArc, count: number, radii: readonly number[]): ArcGrid {
  const parts = [0, ...radii.flatMap((radius) => arc.passages(radius)), arc.end].sort((a, b) => a - b);
  const wanted = [...parts, ...arc.apsides()];
  for (let k = 1; k < count; k++) {
    const s = k / count;
    // Closer together where a long arc is near the world: at both ends of an ellipse, at the start of a hyperbola.
    wanted.push(arc.end * s * (arc.alpha > 0 ? 0.5 + s * (1.5 - s) : s));
  }
  const chi = Float64Array.from(new Set(wanted)).sort();
  const radius = new Float64Array(chi.length);
  const radialSpeed = new Float64Array(chi.length);
  const tangentialSpeed = new Float64Array(chi.length);
  for (let i = 0; i < chi.length; i++) {
    arc.moveTo(chi[i]!);
    radius[i] = arc.radius;
    radialSpeed[i] = arc.radialSpeed;
    tangentialSpeed[i] = arc.tangentialSpeed;
  }
  return {
    arc,
    floor: arc.floor,
    excess: Math.max(0, -arc.alpha),
    chi,
    radius,
    radialSpeed,
    tangentialSpeed,
    parts: [...new Set(parts)],
  };
}
