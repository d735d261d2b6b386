import type { World } from '../world/types.ts';
import { greatCircle } from './greatCircle.ts';
import type { GroundTrack, HeadingReading } from './types.ts';

/**
 * The direction of the ground-relative velocity. East, north, up components on a spherical rotating world obey
 * the navigation equations (e.g. Titterton & Weston 2004, §3.5): transport terms, Coriolis, centrifugal.
 */

export interface TrackInput {
  readonly world: World;
  readonly time: Float64Array;
  readonly radius: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly horizontalSpeed: Float64Array;
  readonly pitch: Float64Array | null;
  /** Heading of the thrust axis where logged, rad; NaN elsewhere. */
  readonly heading: Float64Array | null;
  /** Course where logged, rad. */
  readonly course: Float64Array | null;
  readonly latitude: Float64Array | null;
  readonly longitude: Float64Array | null;
  /** Mean thrust acceleration over each gap between axis points, m/s² (0 unpowered); null = unknown. */
  readonly thrustAcceleration: Float64Array | null;
  readonly site: {
    readonly latitude_rad: number;
    readonly longitude_rad: number;
    readonly launchAzimuth_rad: number;
  };
}

/** Below this horizontal speed the direction is taken from the integrated components, not scaled to the log. */
const SCALE_FROM_M_S = 5;

/** Reading (a): the thrust axis keeps its compass heading (or the logged one), the path's course follows. */
export function heldAzimuthTrack(input: TrackInput): GroundTrack {
  const { world, time, radius, verticalSpeed, horizontalSpeed, site, pitch, thrustAcceleration } = input;
  const n = time.length;
  const out = emptyTrack(n, input.heading === null ? 'held-azimuth' : 'logged');
  const w = world.spin_rad_s;
  let east = 0;
  let north = 0;
  let latitude = site.latitude_rad;
  let longitude = site.longitude_rad;
  let course = site.launchAzimuth_rad;
  let settled = input.heading !== null || leansBack(input);
  for (let i = 0; i < n; i++) {
    const across = horizontalSpeed[i]!;
    const size = Math.hypot(east, north);
    if (size > 0.05) course = Math.atan2(east, north);
    if (!settled && across > SCALE_FROM_M_S) {
      // Off the pad a pitch a little past the vertical is a bias of its channel, not a start backwards.
      if (Math.cos(course - site.launchAzimuth_rad) < 0) course = site.launchAzimuth_rad;
      settled = true;
    }
    if (across > SCALE_FROM_M_S && size > 0) {
      east = across * Math.sin(course);
      north = across * Math.cos(course);
    } else if (i === 0) {
      east = across * Math.sin(course);
      north = across * Math.cos(course);
    }
    out.course[i] = course;
    out.heading[i] = finiteOr(input.heading?.[i], site.launchAzimuth_rad);
    out.latitude[i] = latitude;
    out.longitude[i] = longitude;
    if (i + 1 === n) break;
    const dt = time[i + 1]! - time[i]!;
    const r = (radius[i]! + radius[i + 1]!) / 2;
    const up = (verticalSpeed[i]! + verticalSpeed[i + 1]!) / 2;
    const theta = pitch === null ? Number.NaN : finiteOr((pitch[i]! + pitch[i + 1]!) / 2, pitch[i]!);
    const push =
      thrustAcceleration === null || !Number.isFinite(theta) ? 0 : thrustAcceleration[i]! * Math.cos(theta);
    const beta = finiteOr(input.heading?.[i], site.launchAzimuth_rad);
    // Midpoint rule; the logged speeds at both ends bound the size, so only the direction is integrated.
    let e = east;
    let nn = north;
    let lat = latitude;
    for (let pass = 0; pass < 2; pass++) {
      const h = pass === 0 ? dt / 2 : dt;
      const sinLat = Math.sin(lat);
      const cosLat = Math.cos(lat);
      // Drag acts along the path and only scales the horizontal part, which the log gives: it is left out.
      const ae =
        push * Math.sin(beta) +
        (e * nn * Math.tan(lat)) / r -
        (e * up) / r -
        2 * w * (cosLat * up - sinLat * nn);
      const an =
        push * Math.cos(beta) -
        (e * e * Math.tan(lat)) / r -
        (nn * up) / r -
        2 * w * sinLat * e -
        w * w * r * sinLat * cosLat;
      const ne = east + ae * h;
      const nNorth = north + an * h;
      lat = latitude + ((pass === 0 ? nn : (north + nNorth) / 2) / r) * h;
      e = ne;
      nn = nNorth;
    }
    longitude += ((east + e) / 2 / (r * Math.cos(latitude))) * dt;
    latitude = lat;
    east = e;
    north = nn;
  }
  finishInertial(out, input);
  return out;
}

/** True where thrust points against the launch azimuth on the whole. */
function leansBack({ time, pitch, thrustAcceleration }: TrackInput): boolean {
  if (pitch === null || thrustAcceleration === null) return false;
  let sum = 0;
  for (let i = 0; i + 1 < time.length; i++) {
    const part = thrustAcceleration[i]! * Math.cos(pitch[i]!) * (time[i + 1]! - time[i]!);
    if (Number.isFinite(part)) sum += part;
  }
  return sum < 0;
}

/** Reading (b): the ground track is the great circle that leaves the site along the launch azimuth. */
export function greatCircleTrack(input: TrackInput): GroundTrack {
  const { time, radius, horizontalSpeed, site } = input;
  const n = time.length;
  const out = emptyTrack(n, 'great-circle');
  const circle = greatCircle(site);
  const [sin0, cos0] = [Math.sin(site.latitude_rad), Math.cos(site.latitude_rad)];
  let arc = 0;
  for (let i = 0; i < n; i++) {
    const { sine, north, east } = circle(arc);
    out.latitude[i] = Math.asin(sine);
    out.longitude[i] =
      site.longitude_rad +
      Math.atan2(Math.sin(site.launchAzimuth_rad) * Math.sin(arc) * cos0, Math.cos(arc) - sin0 * sine);
    out.course[i] = Math.atan2(east, north);
    out.heading[i] = finiteOr(input.heading?.[i], out.course[i]!);
    if (i + 1 < n) {
      const across = (horizontalSpeed[i]! + horizontalSpeed[i + 1]!) / 2;
      const step = (across / ((radius[i]! + radius[i + 1]!) / 2)) * (time[i + 1]! - time[i]!);
      if (Number.isFinite(step)) arc += step;
    }
  }
  finishInertial(out, input);
  return out;
}

/** The course as logged, or as the logged positions move over the ground. */
export function loggedTrack(input: TrackInput, course: Float64Array): GroundTrack {
  const { time, radius, horizontalSpeed, site } = input;
  const n = time.length;
  const out = emptyTrack(n, 'logged');
  let latitude = finiteOr(input.latitude?.[0], site.latitude_rad);
  let longitude = finiteOr(input.longitude?.[0], site.longitude_rad);
  let last = site.launchAzimuth_rad;
  for (let i = 0; i < n; i++) {
    last = finiteOr(course[i], last);
    out.course[i] = last;
    out.heading[i] = finiteOr(input.heading?.[i], site.launchAzimuth_rad);
    latitude = finiteOr(input.latitude?.[i], latitude);
    longitude = finiteOr(input.longitude?.[i], longitude);
    out.latitude[i] = latitude;
    out.longitude[i] = longitude;
    if (i + 1 < n) {
      const along =
        ((horizontalSpeed[i]! + horizontalSpeed[i + 1]!) / 2 / radius[i]!) * (time[i + 1]! - time[i]!);
      if (Number.isFinite(along)) {
        latitude += along * Math.cos(last);
        longitude += (along * Math.sin(last)) / Math.cos(latitude);
      }
    }
  }
  finishInertial(out, input);
  return out;
}

/** Course from logged latitude and longitude: direction from each axis point to the next, NaN while still. */
export function courseFromPositions(
  latitude: Float64Array,
  longitude: Float64Array,
  latitudeRate: Float64Array,
  longitudeRate: Float64Array,
): Float64Array {
  return latitude.map((phi, i) => {
    const east = longitudeRate[i]! * Math.cos(phi);
    const north = latitudeRate[i]!;
    return Math.hypot(east, north) > 1e-7 && Number.isFinite(longitude[i]!)
      ? Math.atan2(east, north)
      : Number.NaN;
  });
}

function emptyTrack(n: number, reading: HeadingReading): GroundTrack {
  return {
    reading,
    course: new Float64Array(n),
    heading: new Float64Array(n).fill(Number.NaN),
    latitude: new Float64Array(n),
    longitude: new Float64Array(n),
    inertialSpeed: new Float64Array(n),
    inertialHorizontalSpeed: new Float64Array(n),
    inertialEast: new Float64Array(n),
    inertialNorth: new Float64Array(n),
  };
}

/** V = v + ω×r in east, north, up. */
function finishInertial(track: GroundTrack, input: TrackInput): void {
  const { world, radius, horizontalSpeed, verticalSpeed } = input;
  for (let i = 0; i < track.course.length; i++) {
    const east =
      horizontalSpeed[i]! * Math.sin(track.course[i]!) +
      world.spin_rad_s * radius[i]! * Math.cos(track.latitude[i]!);
    const north = horizontalSpeed[i]! * Math.cos(track.course[i]!);
    track.inertialEast[i] = east;
    track.inertialNorth[i] = north;
    track.inertialHorizontalSpeed[i] = Math.hypot(east, north);
    track.inertialSpeed[i] = Math.hypot(east, north, verticalSpeed[i]!);
  }
}

function finiteOr(value: number | undefined, otherwise: number): number {
  return value !== undefined && Number.isFinite(value) ? value : otherwise;
}
