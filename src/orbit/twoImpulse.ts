import { ApsisConics, conicPlaces } from './apsisConics.ts';
import type { ArcGrid } from './arcGrid.ts';
import type { ScaledTarget, Way } from './toGoTypes.ts';
import { type Candidate, gridMinima, mirrored, type WayFamily } from './wayFamily.ts';

const PLACES = conicPlaces(5, 9);
const CONICS = PLACES.length;

/**
 * Ways of two impulses: the first on the present arc, onto a conic that touches the target at one of its apsides,
 * the second there (METHODS §5, a). Returns what is worth refining, for each apsis one list of ways that begin now and one of those that
 * begin later.
 */
export function twoImpulseWays(grid: ArcGrid, target: ScaledTarget): Candidate[][] {
  return target.apsides.flatMap(({ radius, speed }) => waysToApsis(grid, radius, speed));
}

function waysToApsis(grid: ArcGrid, apsis: number, speed: number): Candidate[][] {
  const { arc, chi, parts } = grid;
  const count = chi.length;
  const conics = new ApsisConics();
  const costs = new Float64Array(count * CONICS);
  for (let i = 0, at = 0; i < count; i++) {
    const radius = grid.radius[i]!;
    const up = grid.radialSpeed[i]!;
    const along = grid.tangentialSpeed[i]!;
    conics.prepare(radius, apsis, grid, apsis > radius, false);
    for (let k = 0; k < CONICS; k++, at++) {
      conics.choose(PLACES[k]!);
      costs[at] =
        Math.sqrt((conics.radialSpeed - up) ** 2 + (conics.tangentialSpeed - along) ** 2) +
        Math.abs(conics.apsisSpeed - speed);
    }
  }
  const now: Candidate[] = [];
  const later: Candidate[] = [];
  const families: (readonly [WayFamily, WayFamily])[] = [];
  /** The conic at point i, in the part of the arc before it or after it, or in both where they meet. */
  const propose = (i: number, place: number): void => {
    for (let part = 0; part < Math.max(1, parts.length - 1); part++) {
      const from = parts[part]!;
      const length = (parts[part + 1] ?? from) - from;
      const along = length > 0 ? (chi[i]! - from) / length : 0;
      if (along < 0 || along > 1) continue;
      families[part] ??= mirrored((sign) => family(grid, apsis, speed, from, length, sign));
      const ways = families[part]![place < 0 ? 1 : 0];
      const x = length > 0 ? Float64Array.of(Math.abs(place), along) : Float64Array.of(Math.abs(place));
      (i === 0 ? now : later).push({ family: ways, x, cost: ways.cost(x) });
    }
  };
  gridMinima(costs, [count, 1, CONICS], (i, _, k) => propose(i, PLACES[k]!));
  // A first impulse at an apsis along the path: the very place of Hohmann's transfers.
  const level = new Set([0, ...arc.apsides().map((at) => chi.indexOf(at))]);
  for (const i of level) propose(i, 0);
  return [now, later];
}

/** Coordinates: the conic, from the level one to the last that rises or falls; the place in the part of the arc. */
function family(
  grid: ArcGrid,
  apsis: number,
  speed: number,
  from: number,
  length: number,
  sign: number,
): Omit<WayFamily, 'mirror'> {
  const { arc } = grid;
  const conics = new ApsisConics();
  arc.moveTo(from + 0.5 * length);
  const outer = apsis > arc.radius;
  let first = 0;
  let second = 0;
  const cost = (x: Float64Array): number => {
    arc.moveTo(from + length * (x[1] ?? 0));
    conics.prepare(arc.radius, apsis, grid, outer, false);
    conics.choose(sign * x[0]!);
    first = Math.sqrt(
      (conics.radialSpeed - arc.radialSpeed) ** 2 + (conics.tangentialSpeed - arc.tangentialSpeed) ** 2,
    );
    second = Math.abs(conics.apsisSpeed - speed);
    return first + second;
  };
  const way = (x: Float64Array): Way => ({
    cost: cost(x),
    impulses: [first, second],
    chi: from + length * (x[1] ?? 0),
  });
  return { cost, way };
}
