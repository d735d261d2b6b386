import type { Log } from '../log/types.ts';
import type { Mission } from '../mission/types.ts';
import { radiusAt_m, radiusSlope_m } from '../world/radius.ts';
import type { Axis } from './axis.ts';
import { greatCircle } from './greatCircle.ts';
import type { Kinematics } from './kinematics.ts';
import { localPolynomial } from './localPolynomial.ts';
import { filled } from './onAxis.ts';
import { finiteSamples } from './steps.ts';

/** Geocentric latitude along the flight and its rate, rad and rad/s, on the axis. */
export interface LatitudeAlong {
  readonly latitude: Float64Array;
  readonly rate: Float64Array;
}

/**
 * Latitude as logged, else along the great circle from the site by the horizontal speed (spherical trigonometry): near
 * enough for the ground's turning and an ellipsoid's radius, before the track is known.
 * @param t row times from lift-off
 */
export function latitudeAlong(
  log: Log,
  t: Float64Array,
  axis: Axis,
  mission: Mission,
  path: Kinematics,
): LatitudeAlong {
  return loggedLatitude(log, t, axis.time) ?? latitudeByCircle(axis.time, mission, path);
}

function loggedLatitude(log: Log, t: Float64Array, query: Float64Array): LatitudeAlong | null {
  const { latitude } = log.channels;
  if (latitude === undefined) return null;
  const samples = finiteSamples(t, latitude);
  if (samples.t.length < 5) return null;
  const step = (samples.t[samples.t.length - 1]! - samples.t[0]!) / (samples.t.length - 1);
  const options = { degree: 2, window_s: Math.max(2, 6 * step), minPoints: 5, breaks: [] } as const;
  const fit = localPolynomial(samples.t, samples.y, query, options);
  const [value, rate] = [filled(query, fit.value), filled(query, fit.rate)];
  return value === null || rate === null ? null : { latitude: value, rate };
}

function latitudeByCircle(time: Float64Array, { world, site }: Mission, path: Kinematics): LatitudeAlong {
  const n = time.length;
  const out = { latitude: new Float64Array(n), rate: new Float64Array(n) };
  const circle = greatCircle(site);
  const turning = path.speed.map((v, i) => {
    const w = path.verticalSpeed[i]!;
    return Math.sqrt(Math.max(0, v * v - w * w)) / (world.radius_m + path.altitude[i]!);
  });
  let arc = 0;
  for (let i = 0; i < n; i++) {
    if (i > 0) {
      const step = ((turning[i - 1]! + turning[i]!) / 2) * (time[i]! - time[i - 1]!);
      if (Number.isFinite(step)) arc += step;
    }
    const { sine, north } = circle(arc);
    out.latitude[i] = Math.asin(sine);
    out.rate[i] = (north / Math.max(1e-6, Math.sqrt(1 - sine * sine))) * turning[i]!;
  }
  return out;
}

/**
 * Over an ellipsoid the altitude's rate is not the radius': the ground falls away under a path toward a pole. Adds what
 * it does to the path's vertical speed, in place; a logged vertical speed is left alone where it adds up to the change
 * of the radius rather than to that of the altitude.
 */
export function addGroundsFall(
  log: Log,
  axis: Axis,
  { world }: Mission,
  path: Kinematics,
  { latitude, rate }: LatitudeAlong,
): void {
  if (world.ellipsoid === null) return;
  const { time } = axis;
  const fall = rate.map((x, i) => x * radiusSlope_m(world, latitude[i]!));
  if (log.channels.verticalSpeed !== undefined) {
    let climbed = 0;
    let ofAltitude = 0;
    let ofRadius = 0;
    for (let i = 1; i < time.length; i++) {
      climbed += ((path.verticalSpeed[i - 1]! + path.verticalSpeed[i]!) / 2) * (time[i]! - time[i - 1]!);
      const risen = path.altitude[i]! - path.altitude[0]!;
      const grown = radiusAt_m(world, 0, latitude[i]!) - radiusAt_m(world, 0, latitude[0]!);
      ofAltitude += Math.abs(climbed - risen);
      ofRadius += Math.abs(climbed - risen - grown);
    }
    if (ofRadius < ofAltitude) return;
  }
  for (let i = axis.liftOff + 1; i < time.length; i++) {
    const v = path.speed[i]!;
    path.verticalSpeed[i] = Math.max(-v, Math.min(v, path.verticalSpeed[i]! + fall[i]!));
  }
}
