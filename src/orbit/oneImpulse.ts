import type { ArcGrid } from './arcGrid.ts';
import type { ScaledTarget, Way } from './toGoTypes.ts';
import { speedAtApsis } from './transfers.ts';
import type { Candidate, WayFamily } from './wayFamily.ts';

/** Points that lie on an apsis of the target but for rounding belong to it. */
const SLACK = 1e-12;

/**
 * Ways of one impulse: straight onto the target orbit where the present arc meets it. The least of them is a kink
 * of the two-impulse ways (the second impulse vanishes), so it is looked for by itself.
 */
export function oneImpulseWays(grid: ArcGrid, target: ScaledTarget): Candidate[] {
  const candidates: Candidate[] = [];
  const { chi, parts } = grid;
  const inner = Math.min(...target.apsides.map((a) => a.radius));
  const outer = Math.max(...target.apsides.map((a) => a.radius));
  for (let part = 0; part < Math.max(1, parts.length - 1); part++) {
    const from = parts[part]!;
    const length = (parts[part + 1] ?? from) - from;
    const families = [1, -1].map((sign) => family(grid, target, [inner, outer], sign, from, length));
    for (let i = 0; i < chi.length; i++) {
      const place = length > 0 ? (chi[i]! - from) / length : 0;
      if (place < 0 || place > 1) continue;
      const radius = grid.radius[i]!;
      if (radius < inner * (1 - SLACK) || radius > outer * (1 + SLACK)) continue;
      for (const ways of families) {
        const x = Float64Array.of(place);
        candidates.push({ family: ways, x, cost: ways.cost(x) });
      }
    }
  }
  return candidates;
}

function family(
  grid: ArcGrid,
  target: ScaledTarget,
  [inner, outer]: readonly [number, number],
  sign: number,
  from: number,
  length: number,
): WayFamily {
  const { arc } = grid;
  const cost = (x: Float64Array): number => {
    arc.moveTo(from + length * x[0]!);
    if (arc.radius < inner * (1 - SLACK) || arc.radius > outer * (1 + SLACK)) return Number.POSITIVE_INFINITY;
    const along = target.momentum / arc.radius;
    const square = 2 / arc.radius - target.alpha - along * along;
    const up = sign * Math.sqrt(Math.max(0, square));
    return Math.sqrt((up - arc.radialSpeed) ** 2 + (along - arc.tangentialSpeed) ** 2);
  };
  const way = (x: Float64Array): Way => {
    const only = cost(x);
    return { cost: only, impulses: [only], chi: from + length * x[0]! };
  };
  return { cost, way, mirror: null };
}

/** Target orbit in units of a radius and the circular speed there. */
export function scaledTarget(apoapsis: number, periapsis: number): ScaledTarget {
  const high = Math.max(apoapsis, periapsis);
  const low = Math.min(apoapsis, periapsis);
  const apsides = [{ radius: high, speed: speedAtApsis(1, high, low) }];
  if (low < high) apsides.push({ radius: low, speed: speedAtApsis(1, low, high) });
  return { apsides, momentum: high * speedAtApsis(1, high, low), alpha: 2 / (high + low) };
}
