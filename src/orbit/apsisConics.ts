import { speedAtApsis } from './transfers.ts';

/** What bounds a family of conics. */
export interface ConicLimits {
  /** Radius below which none may run. */
  readonly floor: number;
  /** Square of the speed far away up to which unbound conics that fall onto the apsis are looked at. */
  readonly excess: number;
}

/**
 * The conics through a point that have an apsis at a given radius, one after the other: they are told apart by
 * the speed at that apsis, hence by one number u. With w₀ the apsis speed of the conic that has its other apsis at
 * the point itself, the apsis speed is w₀(1 ∓ u²), and the sign of u is that of the radial speed at the point, so
 * that speeds are smooth in u, rising and falling branches join at u = 0, and nothing cancels where apsis and
 * point come together. Units: any in which μ = 1.
 */
export class ApsisConics {
  // Fields begin as numbers that are not whole ones, so that the engine need not change their form later.
  /** Speeds at the point and at the apsis, set by `choose`. */
  radialSpeed = Number.NaN;
  tangentialSpeed = Number.NaN;
  apsisSpeed = Number.NaN;
  /** Least and greatest u that the floor and the return to the apsis allow. */
  private low = Number.NaN;
  private high = Number.NaN;
  private central = Number.NaN;
  private sense = Number.NaN;
  private radialScale = Number.NaN;
  private leverage = Number.NaN;

  /**
   * Prepares the conics through `radius` with an apsis at `apsis`, above it (`outer`) or not. No conic that falls
   * first dips below the floor; with `clear` none that rises would either, if it were flown on past its apsis.
   */
  prepare(radius: number, apsis: number, limits: ConicLimits, outer: boolean, clear: boolean): void {
    const central = speedAtApsis(1, apsis, radius);
    this.central = central;
    this.leverage = apsis / radius;
    this.radialScale = (central * Math.sqrt(Math.abs(apsis - radius) * (apsis + radius))) / radius;
    if (outer) {
      this.sense = -1;
      const clearing = Math.sqrt(Math.max(0, 1 - speedAtApsis(1, apsis, limits.floor) / central));
      this.low = -clearing;
      this.high = clear ? clearing : 1;
    } else {
      this.sense = 1;
      // A conic that rises first must come back, one that falls may be a hyperbola.
      this.high = Math.sqrt(Math.max(0, Math.sqrt(2 / apsis) / central - 1));
      this.low = -Math.sqrt(Math.max(0, (1.05 * Math.sqrt(2 / apsis + limits.excess)) / central - 1));
    }
  }

  /** Sets the speeds of the conic at a place in the family: −1 its lowest u, 0 the level conic, 1 its highest. */
  choose(place: number): void {
    const u = place < 0 ? -place * this.low : place * this.high;
    const square = this.sense * u * u;
    this.apsisSpeed = this.central * (1 + square);
    this.radialSpeed = u * this.radialScale * Math.sqrt(2 + square);
    this.tangentialSpeed = this.apsisSpeed * this.leverage;
  }

  /** Size of the impulse that leads from the given speeds at the point onto the conic chosen. */
  changeFrom(radialSpeed: number, tangentialSpeed: number): number {
    const up = this.radialSpeed - radialSpeed;
    const along = this.tangentialSpeed - tangentialSpeed;
    return Math.sqrt(up * up + along * along);
  }

  /**
   * For each of the places given: the size of the impulse from the given speeds onto the conic, and of the one at
   * its apsis onto a given speed there, and `more`; written from `at` on.
   */
  costsInto(
    costs: Float64Array,
    at: number,
    places: Float64Array,
    radialSpeed: number,
    tangentialSpeed: number,
    wanted: number,
    more: number,
  ): void {
    const { low, high, sense, central, radialScale, leverage } = this;
    for (let k = 0; k < places.length; k++) {
      const place = places[k]!;
      const u = place < 0 ? -place * low : place * high;
      const square = sense * u * u;
      const apsisSpeed = central * (1 + square);
      const up = u * radialScale * Math.sqrt(2 + square) - radialSpeed;
      const along = apsisSpeed * leverage - tangentialSpeed;
      costs[at + k] = Math.sqrt(up * up + along * along) + Math.abs(apsisSpeed - wanted) + more;
    }
  }
}

/** Places in a family of conics, `falling` below the level one and `rising` above, closest about it. */
export function conicPlaces(falling: number, rising: number): Float64Array {
  return Float64Array.from({ length: falling + 1 + rising }, (_, k) =>
    k < falling ? -(((falling - k) / falling) ** 2) : ((k - falling) / rising) ** 2,
  );
}
