import type { ConicLimits } from './apsisConics.ts';
import { BallisticArc } from './ballisticArc.ts';
import { ScaledTarget } from './scaledTarget.ts';

/** Farthest turning point that is looked at, in units of the present radius or the target's apoapsis. */
const FARTHEST = 100;
/** Ends, two apsides, four passages and the even points of the densest grid. */
const MOST_POINTS = 32;
const MOST_PARTS = 8;

/**
 * The ballistic arc of one state after another with the target in its units, the arc's parts, and points along it
 * at which ways are tried before the best are refined. Memory is kept from state to state.
 */
export class ArcGrid implements ConicLimits {
  readonly arc = new BallisticArc(0, 1, 1, FARTHEST);
  readonly target = new ScaledTarget();
  floor = Number.NaN;
  excess = Number.NaN;
  farthest = Number.NaN;
  /** Stretches of the arc between its passages of the target's apsides: first χ, length, radius in the middle. */
  parts = 1;
  readonly from = new Float64Array(MOST_PARTS);
  readonly length = new Float64Array(MOST_PARTS);
  readonly middleRadius = new Float64Array(MOST_PARTS);
  /** Points of the grid, by ascending χ. */
  count = 0;
  readonly chi = new Float64Array(MOST_POINTS);
  readonly radius = new Float64Array(MOST_POINTS);
  readonly radialSpeed = new Float64Array(MOST_POINTS);
  readonly tangentialSpeed = new Float64Array(MOST_POINTS);
  private readonly ends: number[] = [];

  /**
   * Takes a state: speeds in units of the circular speed, floor and the target's apsides in units of the radius.
   * No floor is kept that the target itself breaks.
   */
  place(up: number, along: number, floor: number, apoapsis: number, periapsis: number): void {
    const { arc, target, ends } = this;
    target.set(apoapsis, periapsis);
    this.farthest = FARTHEST * Math.max(1, target.outer);
    arc.set(up, along, Math.min(floor, target.inner), this.farthest);
    this.floor = arc.floor;
    this.excess = Math.max(0, -arc.alpha);
    ends.length = 0;
    ends.push(0, arc.end);
    for (let k = 0; k < target.count; k++) arc.passages(target.radius[k]!, ends);
    const count = sortedWithoutTwins(ends, ends.length);
    this.parts = Math.max(1, count - 1);
    for (let k = 0; k < this.parts; k++) {
      const from = ends[k]!;
      const length = k + 1 < count ? ends[k + 1]! - from : 0;
      this.from[k] = from;
      this.length[k] = length;
      arc.moveTo(from + 0.5 * length);
      this.middleRadius[k] = arc.radius;
    }
    ends.length = count;
  }

  /** Lays so many even points on the arc, and its ends, its apsides and its passages of the target's apsides. */
  lay(even: number): void {
    const { arc, ends, chi } = this;
    let count = 0;
    for (const at of ends) chi[count++] = at;
    for (const at of arc.apsides()) chi[count++] = at;
    for (let k = 1; k < even; k++) {
      const s = k / even;
      // Closer together where a long arc is near the world: at both ends of an ellipse, at the start of a hyperbola.
      chi[count++] = arc.end * s * (arc.alpha > 0 ? 0.5 + s * (1.5 - s) : s);
    }
    this.count = sortedWithoutTwins(chi, count);
    for (let i = 0; i < this.count; i++) {
      arc.moveTo(chi[i]!);
      this.radius[i] = arc.radius;
      this.radialSpeed[i] = arc.radialSpeed;
      this.tangentialSpeed[i] = arc.tangentialSpeed;
    }
  }
}

/** Sorts the first `count` numbers in place, equal ones once, and returns how many remain. */
function sortedWithoutTwins(values: number[] | Float64Array, count: number): number {
  let kept = 0;
  for (let k = 0; k < count; k++) {
    const value = values[k]!;
    let at = kept;
    while (at > 0 && values[at - 1]! > value) at--;
    if (at > 0 && values[at - 1] === value) continue;
    for (let j = kept; j > at; j--) values[j] = values[j - 1]!;
    values[at] = value;
    kept++;
  }
  return kept;
}
