import { indexAt } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import type { DragPerMass } from '../../flight/wayDown/dragPerMass.ts';
import { figure, unavailable, withAssumption } from '../figure.ts';
import type { Figure } from '../types.ts';
import { type FallChange, type FallEnd, fallAnew } from './fallAnew.ts';
import type { ImpactReview } from './types.ts';

const DEG = 180 / Math.PI;
const HALF_95 = 1.959964;

export interface ImpactQuestion {
  readonly flight: Flight;
  /** Axis point of the state to start from. */
  readonly from: number;
  /** Axis point at which something other than gravity and drag takes over. */
  readonly to: number;
  readonly until: ImpactReview['until'];
  readonly identified: DragPerMass | null;
}

/** Least fall worth predicting, s. */
const LEAST_S = 20;

/** So many states of the coast are let fall: their mean is surer than one, their scatter tells how sure. */
const STATES = 7;

/**
 * Predicts by re-flight where and when the body comes down through the altitude of axis point `to`, and compares.
 * States along the coast are let fall and averaged; the interval carries their scatter, the noise of a state and
 * the error of the drag.
 */
export function impactReview(q: ImpactQuestion): ImpactReview | null {
  const { flight, from, to } = q;
  if (to <= from || flight.time[to]! - flight.time[from]! < LEAST_S) return null;
  const drag = dragOf(q);
  const altitude_m = flight.altitude[to]!;
  const fall = (i: number, change: FallChange = {}, moved = 0): FallEnd | null =>
    fallAnew(flight, i, altitude_m, Math.max(0, drag.value + moved), change);
  const ends = coastPoints(q).flatMap((i) => fall(i) ?? []);
  const first = ends[0];
  if (first === undefined) return null;
  const middle = (read: (end: FallEnd) => number): number =>
    ends.reduce((sum, end) => sum + read(end), 0) / ends.length;
  const turned = (end: FallEnd): number => wrapped(end.longitude_rad - first.longitude_rad);
  const central: FallEnd = {
    time_s: middle((end) => end.time_s),
    latitude_rad: middle((end) => end.latitude_rad),
    longitude_rad: first.longitude_rad + middle(turned),
  };
  const { noise } = flight;
  const moves: [FallChange, number][] = [
    [{ speed_m_s: noise.speed_m_s / 2 }, 0],
    [{ verticalSpeed_m_s: noise.verticalSpeed_m_s / 2 }, 0],
    [{ altitude_m: noise.altitude_m / 2 }, 0],
    [{}, drag.sigma],
  ];
  const moved = moves.flatMap(([change, k]) => fall(from, change, k) ?? []);
  const scatter = (read: (end: FallEnd) => number): number => {
    const mean = middle(read);
    const square = ends.reduce((sum, end) => sum + (read(end) - mean) ** 2, 0);
    return ends.length < 2 ? 0 : Math.sqrt(square / (ends.length - 1) / ends.length);
  };
  const sigma = (read: (end: FallEnd) => number): number =>
    Math.hypot(scatter(read), ...moved.map((end) => read(end) - read(first)));
  const loggedTime = crossing(flight, to, altitude_m);
  const placed = flight.log.channels.latitude !== undefined && flight.log.channels.longitude !== undefined;
  const place = { latitude: flight.track.latitude[to]!, longitude: flight.track.longitude[to]! };
  const timeSigma = sigma((end) => end.time_s);
  const latitudeSigma = sigma((end) => end.latitude_rad);
  const longitudeSigma = sigma(turned);
  // Without directions the world's turning under the path is assumed; the other reading says what that may do.
  const seen = flight.track.reading === 'logged';
  const other =
    flight.otherTrack === null
      ? null
      : fallAnew({ ...flight, track: flight.otherTrack }, from, altitude_m, drag.value);
  const timed = (value: number, zero: number): Figure => {
    const f = figure(value, timeSigma, seen ? 'derived' : 'assumed');
    const moved = other === null ? Number.NaN : value === zero ? other.time_s : zero - other.time_s;
    return withAssumption(f, 'heading unseen', moved);
  };
  const distance = away(flight, central, place);
  const half =
    HALF_95 *
    flight.mission.world.radius_m *
    Math.hypot(latitudeSigma, longitudeSigma * Math.cos(central.latitude_rad));
  return {
    from_s: flight.time[from]!,
    until: q.until,
    altitude_m,
    drag: drag.from,
    predicted: {
      time_s: timed(central.time_s, central.time_s),
      latitude_deg: angleFigure(central.latitude_rad, latitudeSigma, placed),
      longitude_deg: angleFigure(central.longitude_rad, longitudeSigma, placed),
    },
    logged: {
      time_s: loggedTime,
      latitude_deg: placed ? place.latitude * DEG : null,
      longitude_deg: placed ? wrapped(place.longitude) * DEG : null,
    },
    missTime_s: timed(loggedTime - central.time_s, loggedTime),
    // A distance has no sign: its low end stops at zero.
    missDistance_m: placed
      ? { value: distance, low: Math.max(0, distance - half), high: distance + half, basis: 'derived' }
      : unavailable('the log has no positions'),
  };
}

/** Axis points of the coast, evenly taken, `from` first; the air and what follows are left out. */
function coastPoints({ flight, from, to }: ImpactQuestion): number[] {
  let last = from;
  while (last + 1 < to && flight.dynamicPressure[last + 1]! < 0.01) last++;
  const count = Math.min(STATES, last - from + 1);
  return Array.from({ length: count }, (_, k) =>
    count === 1 ? from : from + Math.round((k * 0.9 * (last - from)) / (count - 1)),
  );
}

function dragOf(q: ImpactQuestion): {
  readonly value: number;
  readonly sigma: number;
  readonly from: ImpactReview['drag'];
} {
  if (q.flight.mission.world.atmosphere === null) return { value: 0, sigma: 0, from: 'none' };
  if (q.identified !== null)
    return { value: q.identified.value_m2_kg, sigma: q.identified.sigma_m2_kg, from: 'identified' };
  const body = q.flight.mission.returnVehicle;
  if (body?.mass_kg && body.referenceArea_m2 !== null && body.dragCoefficient !== null)
    return { value: (body.referenceArea_m2 * body.dragCoefficient) / body.mass_kg, sigma: 0, from: 'card' };
  return { value: 0, sigma: 0, from: 'none' };
}

/** Time at which the log comes down through an altitude near axis point `to`. */
function crossing(flight: Flight, to: number, altitude_m: number): number {
  const { time, altitude } = flight;
  const i = Math.max(1, Math.min(time.length - 1, indexAt(time, time[to]!)));
  const [a, b] = [altitude[i - 1]!, altitude[i]!];
  if (a <= b || altitude_m < b || altitude_m > a) return time[to]!;
  return time[i - 1]! + ((a - altitude_m) / (a - b)) * (time[i]! - time[i - 1]!);
}

function angleFigure(value: number, sigma: number, placed: boolean): Figure {
  return figure(wrapped(value) * DEG, sigma * DEG, placed ? 'derived' : 'assumed');
}

/** Into −π … π. */
function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** Great-circle distance over the ground, m; by haversines, which keep their digits for short ways. */
function away(
  flight: Flight,
  end: FallEnd,
  place: { readonly latitude: number; readonly longitude: number },
): number {
  const dLat = end.latitude_rad - place.latitude;
  const dLon = wrapped(end.longitude_rad - place.longitude);
  const h =
    Math.sin(dLat / 2) ** 2 + Math.cos(end.latitude_rad) * Math.cos(place.latitude) * Math.sin(dLon / 2) ** 2;
  return 2 * flight.mission.world.radius_m * Math.asin(Math.min(1, Math.sqrt(h)));
}
