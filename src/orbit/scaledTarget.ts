import { speedAtApsis } from './transfers.ts';

/** A target orbit in units of a radius and the circular speed there (μ = 1), set anew for each state. */
export class ScaledTarget {
  /** Apsides, the higher first; a circle has one. */
  count = 1;
  readonly radius = new Float64Array(2);
  /** Speed on the target at each apsis. */
  readonly speed = new Float64Array(2);
  momentum = Number.NaN;
  /** Reciprocal of the semi-major axis. */
  alpha = Number.NaN;
  inner = Number.NaN;
  outer = Number.NaN;

  set(apoapsis: number, periapsis: number): void {
    const high = Math.max(apoapsis, periapsis);
    const low = Math.min(apoapsis, periapsis);
    this.count = low < high ? 2 : 1;
    this.radius[0] = high;
    this.radius[1] = low;
    this.speed[0] = speedAtApsis(1, high, low);
    this.speed[1] = speedAtApsis(1, low, high);
    this.momentum = high * this.speed[0]!;
    this.alpha = 2 / (high + low);
    this.inner = low;
    this.outer = high;
  }
}
