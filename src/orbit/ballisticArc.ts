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
  // Fields begin as numbers that are not whole ones, so that the engine need not change their form later.
  alpha = Number.NaN;
  momentum = Number.NaN;
  eccentricity = Number.NaN;
  periapsis = Number.NaN;
  apoapsis = Number.NaN;
  floor = Number.NaN;
  /** χ at the arc's end; its start is χ = 0. */
  end = Number.NaN;
  /** The point set by the last call of `moveTo`: distance and speeds. */
  radius = Number.NaN;
  radialSpeed = Number.NaN;
  tangentialSpeed = Number.NaN;
  private startSpeed = Number.NaN;
  private startAnomaly = Number.NaN;
  private readonly c = { c0: Number.NaN, c1: Number.NaN, c2: 0.5, c3: 1 / 6 };

  /** Speeds in units of the circular speed, `floor` and `farthest` (where an unbound arc ends) of the radius. */
  constructor(radialSpeed: number, tangentialSpeed: number, floor: number, farthest: number) {
    this.set(radialSpeed, tangentialSpeed, floor, farthest);
  }

  /** Takes another start. */
  set(radialSpeed: number, tangentialSpeed: number, floor: number, farthest: number): void {
    this.startSpeed = radialSpeed;
    this.radius = 1;
    this.radialSpeed = radialSpeed;
    this.tangentialSpeed = tangentialSpeed;
    this.momentum = tangentialSpeed;
    this.floor = floor;
    const p = tangentialSpeed * tangentialSpeed;
    this.alpha = 2 - radialSpeed * radialSpeed - p;
    const along = p - 1;
    const across = radialSpeed * tangentialSpeed;
    this.eccentricity = Math.sqrt(along * along + across * across);
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

  /** The values of χ on the arc at which it is at a given radius, added to `into`; ascending. */
  passages(radius: number, into: number[] = []): number[] {
    if (radius < this.periapsis || radius > this.apoapsis) return into;
    const outward = Math.sqrt(Math.max(0, radius * (2 - this.alpha * radius) - this.momentum ** 2));
    const falling = this.onArc(anomalyFromPeriapsis(this.alpha, radius, -outward));
    const rising = this.onArc(anomalyFromPeriapsis(this.alpha, radius, outward));
    const first = Math.min(falling, rising);
    const second = Math.max(falling, rising);
    if (first <= this.end) into.push(first);
    if (second <= this.end) into.push(second);
    return into;
  }

  /** The values of χ on the arc at its apsides, ascending. */
  apsides(): number[] {
    const low = this.onArc(0);
    const high = this.alpha > 0 ? this.onArc(Math.PI / Math.sqrt(this.alpha)) : Number.POSITIVE_INFINITY;
    return [Math.min(low, high), Math.max(low, high)].filter((chi) => chi <= this.end);
  }

  /** An anomaly counted from periapsis, brought to the arc's own count; infinite where it lies before the arc. */
  private onArc(fromPeriapsis: number): number {
    const chi = fromPeriapsis - this.startAnomaly;
    if (chi >= 0) return chi;
    return this.alpha > 0 ? chi + (2 * Math.PI) / Math.sqrt(this.alpha) : Number.POSITIVE_INFINITY;
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
