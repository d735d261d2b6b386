import { ApsisConics, conicPlaces } from './apsisConics.ts';
import type { ArcGrid } from './arcGrid.ts';
import { speedAtApsis } from './transfers.ts';
import { Candidates, gridMinima, mirrored, type WayFamily } from './wayFamily.ts';

const PLACES = conicPlaces(4, 4);
const CONICS = PLACES.length;
const APSES = 8;

/**
 * Ways of three impulses: the first on the present arc, onto any conic that keeps clear of the floor, the second
 * at one of that conic's apsides, onto an ellipse that touches the target at one of its own, the third there
 * (METHODS §5, b).
 */
export class ThreeImpulse {
  /** Ways that begin now, and those that begin later. */
  readonly lists = [new Candidates(), new Candidates()] as const;
  private readonly grid: ArcGrid;
  private readonly goal: number;
  private readonly outer: boolean;
  private readonly conics = new ApsisConics();
  private readonly costs: Float64Array;
  private readonly families: readonly [WayFamily, WayFamily];

  /**
   * @param goal which of the target's apsides the last impulse falls at
   * @param outer whether the second falls at the apsis above the first or at the one below
   */
  constructor(grid: ArcGrid, goal: number, outer: boolean) {
    this.grid = grid;
    this.goal = goal;
    this.outer = outer;
    this.costs = new Float64Array(grid.chi.length * APSES * CONICS);
    this.families = mirrored((sign) => family(grid, goal, outer, sign));
  }

  /** Fills the lists with what is worth refining from the state that the grid holds. */
  propose(): void {
    const { grid, conics, costs, outer } = this;
    const goal = grid.target.radius[this.goal]!;
    const speed = grid.target.speed[this.goal]!;
    for (let i = 0, at = 0; i < grid.count; i++) {
      const radius = grid.radius[i]!;
      const up = grid.radialSpeed[i]!;
      const along = grid.tangentialSpeed[i]!;
      for (let j = 0; j < APSES; j++) {
        const apsis = apsisAt((j + 1) / APSES, radius, outer, grid);
        conics.prepare(radius, apsis, grid, outer, true);
        const onward = speedAtApsis(1, apsis, goal);
        const last = Math.abs(speedAtApsis(1, goal, apsis) - speed);
        conics.costsInto(costs, at, PLACES, up, along, onward, last);
        at += CONICS;
      }
    }
    const [now, later] = this.lists;
    now.clear();
    later.clear();
    const { end } = grid.arc;
    gridMinima(costs, grid.count, APSES, CONICS, (i, j, k) => {
      const place = PLACES[k]!;
      const ways = this.families[place < 0 ? 1 : 0];
      const along = end > 0 ? grid.chi[i]! / end : 0;
      (i === 0 ? now : later).add(ways, end > 0 ? 3 : 2, Math.abs(place), (j + 1) / APSES, along);
    });
  }
}

/**
 * Radius of the apsis numbered y: from the first impulse's own (0) to the farthest or to the floor (1). Quadratic
 * near 0, since the radial speed there goes with the root of the distance.
 */
function apsisAt(y: number, radius: number, outer: boolean, grid: ArcGrid): number {
  return outer
    ? radius / (1 - y * y * (1 - radius / grid.farthest))
    : radius - y * y * Math.max(0, radius - grid.floor);
}

/** Coordinates: the conic, from the level one to the last that rises or falls; its apsis; the place on the arc. */
function family(grid: ArcGrid, goal: number, outer: boolean, sign: number): Omit<WayFamily, 'mirror'> {
  const { arc, target } = grid;
  const conics = new ApsisConics();
  const impulses = new Float64Array(3);
  const chi = (x: Float64Array): number => (x.length > 2 ? arc.end * x[2]! : 0);
  const cost = (x: Float64Array): number => {
    const radius = target.radius[goal]!;
    arc.moveTo(chi(x));
    const apsis = apsisAt(x[1]!, arc.radius, outer, grid);
    conics.prepare(arc.radius, apsis, grid, outer, true);
    conics.choose(sign * x[0]!);
    const first = conics.changeFrom(arc.radialSpeed, arc.tangentialSpeed);
    const second = Math.abs(conics.apsisSpeed - speedAtApsis(1, apsis, radius));
    const third = Math.abs(speedAtApsis(1, radius, apsis) - target.speed[goal]!);
    impulses[0] = first;
    impulses[1] = second;
    impulses[2] = third;
    return first + second + third;
  };
  return { cost, impulses, chi };
}
