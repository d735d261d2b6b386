import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import { radiusAt_m } from '../world/radius.ts';
import { greatCircle } from './greatCircle.ts';
import { localPolynomial } from './localPolynomial.ts';
import { filled } from './onAxis.ts';
import { slowAgainstSpin } from './slowAgainstSpin.ts';
import { finiteSamples } from './steps.ts';
import type { Derivation } from './types.ts';

/** A log with a speed over the ground, and how that was come by; null where the log needs none or can have none. */
export interface WithGroundSpeed {
  readonly log: Log;
  readonly derivation: Derivation;
}

/** Samples that the altitude's rate is taken from. */
const RATE_SAMPLES = 5;

/**
 * Speed over the ground from a logged inertial speed V alone. With the vertical speed w, the ground's own speed
 * Ω = ω·r·cos φ and the course χ, the horizontal part u of the ground-relative velocity solves
 * V² − w² = (u·sin χ + Ω)² + (u·cos χ)² (velocity addition V = v + ω×r in east and north):
 * u = −Ω·sin χ ± √(V² − w² − Ω²·cos² χ), and v² = u² + w². The root is added, but while a flight against the spin is
 * slower than the ground there moves along its course (see slowAgainstSpin). Where the log shows neither course nor
 * latitude, the ground track is taken to be the great circle from the site along the launch azimuth: due east an error
 * of the course then counts in second order only, toward the north or south it moves v by Ω·cos χ for each radian.
 */
export function withGroundSpeed(log: Log, mission: Mission): WithGroundSpeed | null {
  const { channels, time } = log;
  if (channels.speed !== undefined || channels.inertialSpeed === undefined) return null;
  if (channels.verticalSpeed !== undefined && channels.horizontalSpeed !== undefined) return null;
  const inertial = channels.inertialSpeed;
  const altitude = filled(time, channels.altitude);
  if (altitude === null) return null;
  const vertical = filled(time, channels.verticalSpeed) ?? rateOf(time, channels.altitude!);
  const course = filled(time, channels.course);
  const latitude = filled(time, channels.latitude);
  const { world, site } = mission;
  const speed = new Float64Array(time.length).fill(Number.NaN);
  const circle = greatCircle(site);
  const level = inertial.map((V, i) => Math.sqrt(Math.max(0, V * V - vertical[i]! ** 2)));
  const turning =
    world.spin_rad_s * radiusAt_m(world, altitude[0]!, site.latitude_rad) * Math.cos(site.latitude_rad);
  const slow = slowAgainstSpin(level, altitude, turning, course?.[0] ?? site.launchAzimuth_rad);
  let arc = 0;
  let last = -1;
  let before = 0;
  for (let i = 0; i < time.length; i++) {
    if (!Number.isFinite(inertial[i]!)) continue;
    const radius = radiusAt_m(world, altitude[i]!, site.latitude_rad);
    if (last >= 0) arc += (before / radius) * (time[i]! - time[last]!);
    // Without a direction in the log, as the track has them.
    const { sine, north, east } = circle(arc);
    const sinLatitude = latitude === null ? sine : Math.sin(latitude[i]!);
    const chi = course?.[i] ?? Math.atan2(east, north);
    const ground = world.spin_rad_s * radius * Math.sqrt(Math.max(0, 1 - sinLatitude ** 2));
    const w = vertical[i]!;
    const inside = level[i]! ** 2 - (ground * Math.cos(chi)) ** 2;
    const root = Math.sqrt(Math.max(0, inside));
    const across = Math.max(0, (slow[i] === 1 ? -root : root) - ground * Math.sin(chi));
    speed[i] = Math.hypot(across, w);
    last = i;
    before = across;
  }
  const direction =
    course === null ? 'a course along the great circle from the site is assumed' : 'the course is logged';
  return {
    log: { ...log, channels: { ...channels, speed } },
    derivation: {
      quantity: 'speed',
      basis: 'derived',
      how: `over the ground, from the logged inertial speed less the world’s rotation at the ${
        latitude === null ? 'latitude of the track' : 'logged latitude'
      }, with the ${channels.verticalSpeed === undefined ? 'altitude’s rate' : 'logged vertical speed'}; ${direction}`,
    },
  };
}

function rateOf(time: Float64Array, altitude: Float64Array): Float64Array {
  const samples = finiteSamples(time, altitude);
  const step = (samples.t[samples.t.length - 1]! - samples.t[0]!) / Math.max(1, samples.t.length - 1);
  const window_s = (RATE_SAMPLES - 0.99) * step;
  const { rate } = localPolynomial(samples.t, samples.y, time, {
    degree: 2,
    window_s,
    minPoints: 4,
    breaks: [],
  });
  return filled(time, rate) ?? new Float64Array(time.length);
}
