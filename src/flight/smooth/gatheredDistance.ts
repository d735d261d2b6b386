import type { Log } from '../../log/types.ts';
import type { Mission } from '../../mission/types.ts';
import { radiusAt_m } from '../../world/radius.ts';
import { localPolynomial } from '../localPolynomial.ts';
import { whiteNoise } from '../noise.ts';
import { filled } from '../onAxis.ts';
import { courseFromPositions } from '../track.ts';
import type { WeighedSamples } from './pathEvidence.ts';

/** Width over which the course is taken from the positions: long enough for noise, short against its turning. */
const COURSE_WINDOW_S = 12;
/** Below this speed, m/s, noise leads the course about. */
const MOVING_M_S = 20;

/**
 * Distance flown, at the vehicle's own radius, as logged latitudes and longitudes tell it: each move's part along
 * the smoothed course, so that noise does not lengthen the way. Begins where the vehicle is faster than a walk; null
 * where no position is logged. `altitude` on the rows, m.
 */
export function gatheredDistance(
  log: Log,
  t: Float64Array,
  altitude: Float64Array,
  mission: Mission,
  until_s: number,
): WeighedSamples | null {
  const latitude = filled(t, log.channels.latitude);
  const longitude = filled(t, log.channels.longitude);
  if (latitude === null || longitude === null) return null;
  const options = { degree: 2, window_s: COURSE_WINDOW_S, minPoints: 6, breaks: [] } as const;
  const north = localPolynomial(t, latitude, t, options).rate;
  const east = localPolynomial(t, longitude, t, options).rate;
  const course = courseFromPositions(latitude, longitude, north, east);
  const radius = altitude.map((h) => radiusAt_m(mission.world, h, mission.site.latitude_rad));
  const keptT: number[] = [];
  const keptY: number[] = [];
  let distance = 0;
  for (let i = 1; i < t.length && t[i]! <= until_s; i++) {
    const level = Math.cos(latitude[i]!);
    const moving = Math.hypot(north[i]!, east[i]! * level) * radius[i]! > MOVING_M_S;
    if (!moving && keptT.length === 0) continue;
    const chi = course[i]!;
    if (!Number.isFinite(chi)) return null;
    const along =
      (latitude[i]! - latitude[i - 1]!) * Math.cos(chi) +
      (longitude[i]! - longitude[i - 1]!) * level * Math.sin(chi);
    distance += along * ((radius[i]! + radius[i - 1]!) / 2);
    keptT.push(t[i]!);
    keptY.push(distance);
  }
  if (keptT.length < 10) return null;
  const samples = { t: Float64Array.from(keptT), y: Float64Array.from(keptY) };
  const sigma = Math.max(0.5, whiteNoise(samples.t, samples.y));
  return { ...samples, variance: new Float64Array(keptT.length).fill(sigma * sigma) };
}
