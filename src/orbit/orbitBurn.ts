import { type ApsidalChange, leastApsidalChange } from './apsidalChange.ts';
import { cross, dot, propagate, type StateVector } from './kepler.ts';
import { orbitFromPlanarState, type PlanarOrbit } from './planar.ts';
import type { Apsides, Apsis } from './transfers.ts';

/** What a burn is for, by what it did most to the orbit. */
export type OrbitBurnKind =
  | 'raise'
  | 'lower'
  | 'circularise'
  | 'plane-change'
  | 'deorbit'
  | 'trim'
  | 'escape';

/** A burn in orbit weighed against impulses. */
export interface OrbitBurn {
  readonly kind: OrbitBurnKind;
  readonly before: PlanarOrbit;
  readonly after: PlanarOrbit;
  /** Angle between the planes before and after, rad. */
  readonly planeAngle_rad: number;
  /** The impulse, at the burn's middle, that does what the burn did, m/s. */
  readonly impulse_m_s: number;
  /**
   * The cheapest impulses to what the burn was for: the apsis that it moved (both where it moved both), the angle
   * that it turned the plane by; null where the orbit after is open.
   */
  readonly best: ApsidalChange | null;
  /** Apsis of the orbit before at which the first impulse worth the name belongs. */
  readonly bestAt: Apsis | null;
  /** Of the burn's middle on the orbit before, rad from periapsis, −π to π; null on a circle. */
  readonly trueAnomaly_rad: number | null;
}

/** Rounder than this an orbit is a circle: its apsides have no place. */
const CIRCLE = 0.0015;
/** Greatest eccentricity that an orbit made rounder may have to be called circularised. */
const ROUND = 0.1;
/** Impulses below this are no work but a trim, m/s. */
const TRIM_M_S = 2;
/** A turn of the plane that takes less than this share of the impulse was not meant. */
const INCIDENTAL = 0.1;
/** Movement of the one apsis over that of the other from which both were meant. */
const BOTH_SHARE = 0.6;

/**
 * Weighs a burn between two states of one flight, `duration_s` apart, against impulses.
 *
 * @param mu_m3_s2 gravitational parameter
 * @param floorRadius_m lowest radius that a periapsis may have in orbit
 * @param before,after states at ignition and cutoff, inertial
 */
export function weighOrbitBurn(
  mu_m3_s2: number,
  floorRadius_m: number,
  before: StateVector,
  after: StateVector,
  duration_s: number,
): OrbitBurn {
  const first = propagate(mu_m3_s2, before, duration_s / 2);
  const second = propagate(mu_m3_s2, after, -duration_s / 2);
  const impulse_m_s = Math.hypot(...difference(second.velocity_m_s, first.velocity_m_s));
  const planeAngle_rad = angleBetween(
    cross(before.position_m, before.velocity_m_s),
    cross(after.position_m, after.velocity_m_s),
  );
  const orbitBefore = planar(mu_m3_s2, before);
  const orbitAfter = planar(mu_m3_s2, after);
  const turning = 2 * Math.hypot(...first.velocity_m_s) * Math.sin(planeAngle_rad / 2);
  const kind = kindOf(mu_m3_s2, floorRadius_m, orbitBefore, orbitAfter, turning, impulse_m_s);
  const bound = orbitBefore.period_s !== null && orbitAfter.period_s !== null;
  const best = bound
    ? leastApsidalChange(
        mu_m3_s2,
        apsides(orbitBefore),
        aimOf(kind, orbitBefore, orbitAfter),
        turning > INCIDENTAL * impulse_m_s ? planeAngle_rad : 0,
      )
    : null;
  return {
    kind,
    before: orbitBefore,
    after: orbitAfter,
    planeAngle_rad,
    impulse_m_s,
    best,
    bestAt: best === null ? null : placeOf(best),
    trueAnomaly_rad: orbitBefore.eccentricity < CIRCLE ? null : anomaly(mu_m3_s2, first),
  };
}

/** Share of the whole below which an impulse is none. */
const NO_SHARE = 0.02;

function placeOf(best: ApsidalChange): Apsis {
  const first = best.impulses_m_s[0] ?? 0;
  if (first > NO_SHARE * best.deltaV_m_s) return best.from;
  // Without a first impulse the transfer is the orbit before, and the second is made at its other end.
  return best.from === 'periapsis' ? 'apoapsis' : 'periapsis';
}

function planar(mu: number, state: StateVector): PlanarOrbit {
  const radius = Math.hypot(...state.position_m);
  const radial = dot(state.position_m, state.velocity_m_s) / radius;
  const speed = Math.hypot(...state.velocity_m_s);
  return orbitFromPlanarState(mu, radius, radial, Math.sqrt(Math.max(0, speed ** 2 - radial ** 2)));
}

function apsides(orbit: PlanarOrbit): Apsides {
  return { apoapsisRadius_m: orbit.apoapsisRadius_m, periapsisRadius_m: orbit.periapsisRadius_m };
}

/** True anomaly of a state on its orbit, −π to π. */
function anomaly(mu: number, state: StateVector): number {
  const radius = Math.hypot(...state.position_m);
  const radial = dot(state.position_m, state.velocity_m_s) / radius;
  const h = Math.hypot(...cross(state.position_m, state.velocity_m_s));
  return Math.atan2((radial * h) / mu, (h * h) / (mu * radius) - 1);
}

function kindOf(
  mu: number,
  floorRadius_m: number,
  before: PlanarOrbit,
  after: PlanarOrbit,
  turning: number,
  impulse: number,
): OrbitBurnKind {
  if (after.period_s === null || before.period_s === null) return 'escape';
  if (before.periapsisRadius_m >= floorRadius_m && after.periapsisRadius_m < floorRadius_m) return 'deorbit';
  if (impulse < TRIM_M_S) return 'trim';
  const reshaping = leastApsidalChange(mu, apsides(before), apsides(after)).deltaV_m_s;
  if (turning > 0.7 * impulse && reshaping < 0.3 * impulse) return 'plane-change';
  const rounder = after.eccentricity < 0.4 * before.eccentricity && after.eccentricity < ROUND;
  if (rounder && before.eccentricity > 2 * CIRCLE) return 'circularise';
  return after.energy_J_kg > before.energy_J_kg ? 'raise' : 'lower';
}

/** The orbit that the burn was for: what it moved on purpose, and the rest as it was. */
function aimOf(kind: OrbitBurnKind, before: PlanarOrbit, after: PlanarOrbit): Apsides {
  const was = apsides(before);
  const is = apsides(after);
  const high = { apoapsisRadius_m: is.apoapsisRadius_m, periapsisRadius_m: was.periapsisRadius_m };
  const low = { apoapsisRadius_m: was.apoapsisRadius_m, periapsisRadius_m: is.periapsisRadius_m };
  if (kind === 'plane-change') return was;
  if (kind === 'deorbit') return low;
  if (kind === 'trim' || kind === 'escape') return is;
  const up = Math.abs(is.apoapsisRadius_m - was.apoapsisRadius_m);
  const down = Math.abs(is.periapsisRadius_m - was.periapsisRadius_m);
  if (kind !== 'circularise' && Math.min(up, down) > BOTH_SHARE * Math.max(up, down)) return is;
  const aim = up > down ? high : low;
  return aim.apoapsisRadius_m >= aim.periapsisRadius_m ? aim : is;
}

type Triple = readonly [number, number, number];

function difference(a: Triple, b: Triple): Triple {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function angleBetween(a: Triple, b: Triple): number {
  return Math.atan2(Math.hypot(...cross(a, b)), dot(a, b));
}
