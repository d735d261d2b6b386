import { ApsisConics, conicPlaces } from './apsisConics.ts';
import type { ArcGrid } from './arcGrid.ts';
import { Candidates, gridMinima, mirrored, type WayFamily } from './wayFamily.ts';

const PLACES = conicPlaces(5, 9);
const CONICS = PLACES.length;

/**
 * Ways of two impulses: the first on the present arc, onto a conic that touches the target at one of its apsides,
 * the second there (METHODS §5, a).
 */
export class TwoImpulse {
  /** Ways that begin now, and those that begin later. */
  readonly lists = [new Candidates(), new Candidates()] as const;
  private readonly grid: ArcGrid;
  private readonly apsis: number;
  private readonly conics = new ApsisConics();
  private readonly costs: Float64Array;
  private readonly families: (readonly [WayFamily, WayFamily])[] = [];

  /** @param apsis which of the target's apsides the second impulse falls at */
  constructor(grid: ArcGrid, apsis: number) {
    this.grid = grid;
    this.apsis = apsis;
    this.costs = new Float64Array(grid.chi.length * CONICS);
  }

  /** Fills the lists with what is worth refining from the state that the grid holds. */
  propose(): void {
    const { grid, conics, costs } = this;
    const { arc, target } = grid;
    const apsis = target.radius[this.apsis]!;
    const speed = target.speed[this.apsis]!;
    for (let i = 0; i < grid.count; i++) {
      const radius = grid.radius[i]!;
      conics.prepare(radius, apsis, grid, apsis > radius, false);
      const up = grid.radialSpeed[i]!;
      const along = grid.tangentialSpeed[i]!;
      conics.costsInto(costs, i * CONICS, PLACES, up, along, speed, 0);
    }
    for (const list of this.lists) list.clear();
    gridMinima(costs, grid.count, 1, CONICS, (i, _, k) => this.proposeAt(i, PLACES[k]!));
    // A first impulse at an apsis along the path: the very place of Hohmann's transfers.
    this.proposeAt(0, 0);
    for (const at of arc.apsides()) {
      const i = grid.chi.indexOf(at);
      if (i > 0 && i < grid.count) this.proposeAt(i, 0);
    }
  }

  /** The conic at point i, in the part of the arc before it or after it, or in both where they meet. */
  private proposeAt(i: number, place: number): void {
    const { grid, families } = this;
    const list = this.lists[i === 0 ? 0 : 1];
    for (let part = 0; part < grid.parts; part++) {
      const length = grid.length[part]!;
      const along = length > 0 ? (grid.chi[i]! - grid.from[part]!) / length : 0;
      if (along < 0 || along > 1) continue;
      families[part] ??= mirrored((sign) => family(grid, this.apsis, part, sign));
      list.add(families[part]![place < 0 ? 1 : 0], length > 0 ? 2 : 1, Math.abs(place), along);
    }
  }
}

/** Coordinates: the conic, from the level one to the last that rises or falls; the place in the part of the arc. */
function family(grid: ArcGrid, apsis: number, part: number, sign: number): Omit<WayFamily, 'mirror'> {
  const { arc, target } = grid;
  const conics = new ApsisConics();
  const impulses = new Float64Array(2);
  const chi = (x: Float64Array): number =>
    x.length > 1 ? grid.from[part]! + grid.length[part]! * x[1]! : grid.from[part]!;
  const cost = (x: Float64Array): number => {
    const radius = target.radius[apsis]!;
    arc.moveTo(chi(x));
    conics.prepare(arc.radius, radius, grid, radius > grid.middleRadius[part]!, false);
    conics.choose(sign * x[0]!);
    const first = conics.changeFrom(arc.radialSpeed, arc.tangentialSpeed);
    const second = Math.abs(conics.apsisSpeed - target.speed[apsis]!);
    impulses[0] = first;
    impulses[1] = second;
    return first + second;
  };
  return { cost, impulses, chi };
}
