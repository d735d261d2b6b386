import type { ArcGrid } from './arcGrid.ts';
import { Candidates, type WayFamily } from './wayFamily.ts';

/** Points that lie on an apsis of the target but for rounding belong to it. */
const SLACK = 1e-12;

/**
 * Ways of one impulse: straight onto the target orbit where the present arc meets it. The least of them is a kink
 * of the two-impulse ways (the second impulse vanishes), so it is looked for by itself.
 */
export class OneImpulse {
  readonly lists = [new Candidates()];
  private readonly grid: ArcGrid;
  private readonly families: WayFamily[] = [];

  constructor(grid: ArcGrid) {
    this.grid = grid;
  }

  /** Fills the lists with what is worth refining from the state that the grid holds. */
  propose(): void {
    const { grid, families } = this;
    const { chi, target } = grid;
    const [list] = this.lists;
    list!.clear();
    for (let part = 0; part < grid.parts; part++) {
      for (let i = 0; i < grid.count; i++) {
        const length = grid.length[part]!;
        const place = length > 0 ? (chi[i]! - grid.from[part]!) / length : 0;
        if (place < 0 || place > 1) continue;
        const radius = grid.radius[i]!;
        if (radius < target.inner * (1 - SLACK) || radius > target.outer * (1 + SLACK)) continue;
        families[2 * part] ??= family(grid, part, 1);
        families[2 * part + 1] ??= family(grid, part, -1);
        list!.add(families[2 * part]!, 1, place);
        list!.add(families[2 * part + 1]!, 1, place);
      }
    }
  }
}

/** Coordinate: the place in the part of the arc. */
function family(grid: ArcGrid, part: number, sign: number): WayFamily {
  const { arc, target } = grid;
  const impulses = new Float64Array(1);
  const chi = (x: Float64Array): number => grid.from[part]! + grid.length[part]! * x[0]!;
  const cost = (x: Float64Array): number => {
    arc.moveTo(chi(x));
    const { radius } = arc;
    if (radius < target.inner * (1 - SLACK) || radius > target.outer * (1 + SLACK))
      return Number.POSITIVE_INFINITY;
    const along = target.momentum / radius;
    const square = 2 / radius - target.alpha - along * along;
    const up = sign * Math.sqrt(Math.max(0, square));
    const upChange = up - arc.radialSpeed;
    const alongChange = along - arc.tangentialSpeed;
    impulses[0] = Math.sqrt(upChange * upChange + alongChange * alongChange);
    return impulses[0];
  };
  return { cost, impulses, chi, mirror: null };
}
