import { greenwichMeanSiderealAngle_rad } from '../world/earthRotation.ts';
import { readClock } from './clock.ts';
import type { Ephemeris } from './oemText.ts';

/** How a frame lies to the turning world. Its third axis is the spin axis in every case. */
export type Turning =
  /** The frame turns with the world; velocities are relative to it. */
  | { readonly kind: 'fixed'; readonly spin_rad_s: number }
  /** Inertial, first axis to the equinox; UNIX time of the first epoch. */
  | { readonly kind: 'equinox'; readonly spin_rad_s: number; readonly start_unix_s: number }
  /** Inertial, first axis over the meridian from which longitudes count, at the first epoch. */
  | { readonly kind: 'inertial'; readonly spin_rad_s: number };

/** A path over the ground; angles run on past a full turn, so that they can be interpolated. */
export interface OemTrack {
  readonly radius_m: Float64Array;
  readonly speed_m_s: Float64Array;
  readonly verticalSpeed_m_s: Float64Array;
  /** NaN where nothing moves over the ground. */
  readonly course_rad: Float64Array;
  readonly latitude_rad: Float64Array;
  readonly longitude_rad: Float64Array;
}

/** Slower than this over the ground, a course would be rounding. */
const STILL_M_S = 0.05;

/** Ground-relative motion v = V − ω×r of states, in spherical components. */
export function groundTrackOf(
  { epochs, states }: Pick<Ephemeris, 'epochs' | 'states'>,
  turning: Turning,
): OemTrack {
  const n = epochs.length;
  const out = Array.from({ length: 6 }, () => new Float64Array(n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [radius_m, speed_m_s, verticalSpeed_m_s, course_rad, latitude_rad, longitude_rad] = out;
  const [X, Y, Z, VX, VY, VZ] = states;
  const spin = turning.kind === 'fixed' ? 0 : turning.spin_rad_s;
  const start = seconds(epochs[0]);
  const zero = turning.kind === 'equinox' ? greenwichMeanSiderealAngle_rad(turning.start_unix_s) : 0;
  for (let i = 0; i < n; i++) {
    const [x, y, z] = [X![i]!, Y![i]!, Z![i]!];
    const [vx, vy, vz] = [VX![i]! + spin * y, VY![i]! - spin * x, VZ![i]!];
    const level = Math.hypot(x, y);
    const r = Math.hypot(level, z);
    const up = (x * vx + y * vy + z * vz) / r;
    const east = level === 0 ? vy : (x * vy - y * vx) / level;
    const north = level === 0 ? -vx * Math.sign(z) : (level * vz) / r - (z * (x * vx + y * vy)) / (r * level);
    radius_m[i] = r;
    speed_m_s[i] = Math.hypot(vx, vy, vz);
    verticalSpeed_m_s[i] = up;
    latitude_rad[i] = Math.atan2(z, level);
    longitude_rad[i] = Math.atan2(y, x) - zero - spin * (seconds(epochs[i]) - start);
    course_rad[i] = Math.hypot(east, north) < STILL_M_S ? Number.NaN : Math.atan2(east, north);
  }
  runOn(longitude_rad);
  runOn(course_rad);
  return { radius_m, speed_m_s, verticalSpeed_m_s, course_rad, latitude_rad, longitude_rad };
}

function seconds(epoch: string | undefined): number {
  return readClock(epoch ?? '')?.seconds ?? Number.NaN;
}

/** Takes the jumps of a full turn out of a row of angles; the first comes to lie in −π to π. */
function runOn(angles: Float64Array): void {
  const turn = 2 * Math.PI;
  let last = 0;
  for (let i = 0; i < angles.length; i++) {
    const angle = angles[i]!;
    if (!Number.isFinite(angle)) continue;
    last = angle - turn * Math.round((angle - last) / turn);
    angles[i] = last;
  }
}
