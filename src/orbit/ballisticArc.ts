import { anomalyFromPeriapsis, timeAtAnomaly } from './kepler.ts';
import { stumpff } from './stumpff.ts';

/**
 * The path of a vehicle left to itself, from its present point on as long as it stays above a floor, in units of
 * the present radius and the circular speed there (so that μ = 1 and the start radius is 1). The independent
 * variable is the universal anomaly χ, dχ = dt/r, with which all conics, straight falls among them, are smooth
 * (Battin 1999, §4.5). A bound arc that never meets the floor is one whole turn.
 */
export class BallisticArc {
  /** Reciprocal of the semi-major axis: positive when bound. */
  readonly alpha: number;
  readonly momentum: number;
  readonly eccentricity: number;
  readonly periapsis: number;
  readonly apoapsis: number;
  readonly floor: number;
  /** χ at the arc's end; its start is χ = 0. */
  readonly end: number;
  /** The point set by the last call of `moveTo`: distance and speeds. */
  radius = 1;
  radialSpeed: number;
  tangentialSpeed: number;
  private readonly startSpeed: number;
  private readonly startAnomaly: number;
  private readonly c = { c0: 1, c1: 1, c2: 0.5, c3: 1 / 6 };

  /** Speeds in units of the circular speed, `floor` and `farthest` (where an unbound arc ends) of the radius. */
  constructor(radialSpeed: number, tangentialSpeed: number, floor: number, farthest: number) {
    this.startSpeed = radialSpeed;
    this.radialSpeed = radialSpeed;
    this.tangentialSpeed = tangentialSpeed;
    this.momentum = tangentialSpeed;
    this.floor = floor;
    const p = tangentialSpeed * tangentialSpeed;
    this.alpha = 2 - radialSpeed * radialSpeed - p;
    this.eccentricity = Math.hypot(p - 1, radialSpeed * tangentialSpeed);
    this.periapsis = p / (1 + this.eccentricity);
    this.apoapsis = this.alpha > 0 ? (1 + this.eccentricity) / this.alpha : Number.POSITIVE_INFINITY;
    this.startAnomaly = anomalyFromPeriapsis(this.alpha, 1, radialSpeed);
    this.end = this.findEnd(farthest);
  }

  /** Sets the point at χ. */
  moveTo(chi: number): void {
    const { c0, c1, c2 } = stumpff(this.alpha * chi * chi, this.c);
    this.radius = c0 + this.startSpeed * chi * c1 + chi * chi * c2;
    this.radialSpeed = (this.startSpeed * c0 + (1 - this.alpha) * chi * c1) / this.radius;
    this.tangentialSpeed = this.momentum / this.radius;
  }

  /** Time from the start to χ, in units of √(r³/μ). */
  timeAt(chi: number): number {
    return timeAtAnomaly(this.alpha, this.startSpeed, chi);
  }

  /** The values of χ on the arc at which it is at a given radius, ascending. */
  passages(radius: number): number[] {
    if (radius < this.periapsis || radius > this.apoapsis) return [];
    const outward = Math.sqrt(Math.max(0, radius * (2 - this.alpha * radius) - this.momentum ** 2));
    return this.onArc([
      anomalyFromPeriapsis(this.alpha, radius, -outward),
      anomalyFromPeriapsis(this.alpha, radius, outward),
    ]);
  }

  /** The values of χ on the arc at its apsides, ascending. */
  apsides(): number[] {
    return this.onArc(this.alpha > 0 ? [0, Math.PI / Math.sqrt(this.alpha)] : [0]);
  }

  /** Anomalies counted from periapsis, brought to the arc's own count; those before it or past it left out. */
  private onArc(fromPeriapsis: number[]): number[] {
    const turn = this.alpha > 0 ? (2 * Math.PI) / Math.sqrt(this.alpha) : Number.POSITIVE_INFINITY;
    return fromPeriapsis
      .map((chi) => chi - this.startAnomaly)
      .map((chi) => (chi < 0 && turn < Number.POSITIVE_INFINITY ? chi + turn : chi))
      .filter((chi) => chi >= 0 && chi <= this.end)
      .sort((a, b) => a - b);
  }

  private findEnd(farthest: number): number {
    const rising = this.startSpeed >= 0;
    const bound = this.alpha > 0;
    if (this.periapsis < this.floor && (bound || !rising)) {
      if (!rising && this.floor >= 1) return 0;
      const { floor } = this;
      const inward = -Math.sqrt(Math.max(0, floor * (2 - this.alpha * floor) - this.momentum ** 2));
      const way = anomalyFromPeriapsis(this.alpha, floor, inward) - this.startAnomaly;
      return Math.max(0, rising ? way + (2 * Math.PI) / Math.sqrt(this.alpha) : way);
    }
    if (bound) return (2 * Math.PI) / Math.sqrt(this.alpha);
    const outward = Math.sqrt(farthest * (2 - this.alpha * farthest) - this.momentum ** 2);
    return anomalyFromPeriapsis(this.alpha, farthest, outward) - this.startAnomaly;
  }
}
