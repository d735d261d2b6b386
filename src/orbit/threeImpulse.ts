import { ApsisConics, conicPlaces } from './apsisConics.ts';
import { type ArcGrid, FARTHEST } from './arcGrid.ts';
import type { ScaledTarget, Way } from './toGoTypes.ts';
import { speedAtApsis } from './transfers.ts';
import { type Candidate, gridMinima, mirrored, type WayFamily } from './wayFamily.ts';

const PLACES = conicPlaces(4, 4);
const CONICS = PLACES.length;
const APSES = 8;

/** What a family of three-impulse ways has in common. */
interface Kind {
  /** The target's apsis where the last impulse falls: radius, speed on the target there. */
  readonly goal: number;
  readonly speed: number;
  /** Whether the second impulse falls at the apsis above the first impulse or at the one below. */
  readonly outer: boolean;
  readonly farthest: number;
}

/**
 * Ways of three impulses: the first on the present arc, onto any conic that keeps clear of the floor, the second
 * at one of that conic's apsides, onto an ellipse that touches the target at one of its own, the third there
 * (METHODS §5, b). Returns what is worth refining, for each kind one list of ways that begin now and
 * one of those that begin later.
 */
export function threeImpulseWays(grid: ArcGrid, target: ScaledTarget): Candidate[][] {
  const farthest = FARTHEST * Math.max(1, ...target.apsides.map((a) => a.radius));
  return target.apsides.flatMap(({ radius: goal, speed }) =>
    [true, false].flatMap((outer) => waysOfKind(grid, { goal, speed, outer, farthest })),
  );
}

function waysOfKind(grid: ArcGrid, kind: Kind): Candidate[][] {
  const { arc, chi } = grid;
  const count = chi.length;
  const conics = new ApsisConics();
  const costs = new Float64Array(count * APSES * CONICS);
  for (let i = 0, at = 0; i < count; i++) {
    const radius = grid.radius[i]!;
    const up = grid.radialSpeed[i]!;
    const along = grid.tangentialSpeed[i]!;
    for (let j = 0; j < APSES; j++) {
      const apsis = apsisAt((j + 1) / APSES, radius, kind, arc.floor);
      conics.prepare(radius, apsis, grid, kind.outer, true);
      const onward = speedAtApsis(1, apsis, kind.goal);
      const last = Math.abs(speedAtApsis(1, kind.goal, apsis) - kind.speed);
      for (let k = 0; k < CONICS; k++, at++) {
        conics.choose(PLACES[k]!);
        costs[at] =
          Math.sqrt((conics.radialSpeed - up) ** 2 + (conics.tangentialSpeed - along) ** 2) +
          Math.abs(conics.apsisSpeed - onward) +
          last;
      }
    }
  }
  const now: Candidate[] = [];
  const later: Candidate[] = [];
  const families = mirrored((sign) => family(grid, kind, sign));
  gridMinima(costs, [count, APSES, CONICS], (i, j, k, cost) => {
    const place = PLACES[k]!;
    const y = (j + 1) / APSES;
    const x =
      arc.end > 0
        ? Float64Array.of(Math.abs(place), y, chi[i]! / arc.end)
        : Float64Array.of(Math.abs(place), y);
    (i === 0 ? now : later).push({ family: families[place < 0 ? 1 : 0], x, cost });
  });
  return [now, later];
}

/**
 * Radius of the apsis numbered y: from the first impulse's own (0) to the farthest or to the floor (1). Quadratic
 * near 0, since the radial speed there goes with the root of the distance.
 */
function apsisAt(y: number, radius: number, { outer, farthest }: Kind, floor: number): number {
  return outer
    ? radius / (1 - y * y * (1 - radius / farthest))
    : radius - y * y * Math.max(0, radius - floor);
}

/** Coordinates: the conic, from the level one to the last that rises or falls; its apsis; the place on the arc. */
function family(grid: ArcGrid, kind: Kind, sign: number): Omit<WayFamily, 'mirror'> {
  const { arc } = grid;
  const conics = new ApsisConics();
  const impulses = [0, 0, 0];
  const cost = (x: Float64Array): number => {
    arc.moveTo(arc.end * (x[2] ?? 0));
    const apsis = apsisAt(x[1]!, arc.radius, kind, arc.floor);
    conics.prepare(arc.radius, apsis, grid, kind.outer, true);
    conics.choose(sign * x[0]!);
    const first = Math.sqrt(
      (conics.radialSpeed - arc.radialSpeed) ** 2 + (conics.tangentialSpeed - arc.tangentialSpeed) ** 2,
    );
    const second = Math.abs(conics.apsisSpeed - speedAtApsis(1, apsis, kind.goal));
    const third = Math.abs(speedAtApsis(1, kind.goal, apsis) - kind.speed);
    impulses[0] = first;
    impulses[1] = second;
    impulses[2] = third;
    return first + second + third;
  };
  const way = (x: Float64Array): Way => ({
    cost: cost(x),
    impulses: [...impulses],
    chi: arc.end * (x[2] ?? 0),
  });
  return { cost, way };
}
