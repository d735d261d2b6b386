import { edgeExcess } from '../flight/edgeExcess.ts';
import { localStep } from '../flight/localStep.ts';
import { stateSigma } from '../flight/stateSigma.ts';
import type { Flight, GroundTrack } from '../flight/types.ts';
import { orbitFromPlanarState, type PlanarOrbit } from '../orbit/planar.ts';
import { figureBetween, NORMAL_95, unavailable, widened, withAssumption } from './figure.ts';
import type { Figure, OrbitFigures } from './types.ts';

type Values = Record<keyof OrbitFigures, number>;

/**
 * The orbit at axis point `i`. Intervals come from the state's noise carried through the elements (each input
 * moved by its 95 % half-width, the effects added in quadrature) and reach the other reading of an unseen
 * heading; an unknown launch latitude or azimuth is named beside it.
 */
export function orbitFigures(flight: Flight, i: number): OrbitFigures {
  const { mission } = flight;
  const sigma = stateSigma(flight, i);
  const base = { r: flight.radius[i]!, up: flight.verticalSpeed[i]!, across: flight.horizontalSpeed[i]! };
  const central = elements(flight, flight.track, i, base);
  const half = 1.959964;
  const rounding = roundingHalves(flight, i);
  const dr = Math.max(half * sigma.altitude_m, rounding.altitude_m);
  const du = Math.max(half * sigma.verticalSpeed_m_s, rounding.rate_m_s);
  const dv = half * Math.max(sigma.speed_m_s, (flight.log.resolution.speed ?? 0) / 4);
  const read = (state: State): Values => elements(flight, flight.track, i, state);
  const around = (state: State): Values[][] => [
    [read({ ...state, r: state.r + dr }), read({ ...state, r: state.r - dr })],
    [read({ ...state, across: state.across + dv }), read({ ...state, across: state.across - dv })],
  ];
  // Noise adds in quadrature. A rate that rounding leaves open is a box, not a spread: each of its ends counts in
  // full, and so does zero, where apsides turn, when it lies within reach.
  const isBox = rounding.rate_m_s > half * sigma.verticalSpeed_m_s;
  const level = Math.abs(base.up) < du ? 0 : base.up;
  const rates = [base.up, base.up + du, base.up - du, level].map((up) => ({ ...base, up }));
  const centres = isBox ? rates.map((state) => ({ at: read(state), beside: around(state) })) : [];
  const spread = [...around(base), rates.slice(1, 3).map(read)];
  const other = flight.otherTrack === null ? null : elements(flight, flight.otherTrack, i, base);
  const later = laterInCoast(flight, i);
  const late =
    later === null
      ? null
      : elements(flight, flight.track, later, {
          r: flight.radius[later]!,
          up: flight.verticalSpeed[later]!,
          across: flight.horizontalSpeed[later]!,
        });
  const sites = siteReadings(flight, i).map((site) => ({
    what: site.what,
    values: valuesOf(flight, base, site.course, site.latitude),
  }));
  const make = (name: keyof OrbitFigures): Figure => {
    const value = central[name];
    if (!Number.isFinite(value)) return unavailable('the path is open: it has no apoapsis');
    if (
      name === 'inclination_deg' &&
      !mission.site.latitudeKnown &&
      flight.log.channels.latitude === undefined
    ) {
      return unavailable('neither the log nor the card tells where on the world it flew');
    }
    const reach = reachOf(value, spread, name);
    let f = figureBetween(value, value - reach.down, value + reach.up, 'derived');
    for (const { at, beside } of centres) {
      const side = reachOf(at[name], beside, name);
      f = widened(widened(f, at[name] - side.down), at[name] + side.up);
    }
    if (other !== null) f = widened(f, other[name]);
    // The speed across the path is known no better than the speed along it: the plane turns by their ratio.
    if (name === 'inclination_deg') {
      const turned = (dv / Math.max(1, base.across)) * (180 / Math.PI);
      f = widened(widened(f, f.low! - turned), f.high! + turned);
    }
    // A coast keeps its orbit: what it seems to change there is the log's error (a display that lags, drift).
    if (late !== null) f = widened(f, late[name]);
    for (const site of sites) f = withAssumption(f, site.what, site.values[name]);
    return f;
  };
  return {
    apoapsisAltitude_m: make('apoapsisAltitude_m'),
    periapsisAltitude_m: make('periapsisAltitude_m'),
    eccentricity: make('eccentricity'),
    inclination_deg: make('inclination_deg'),
    semiMajorAxis_m: make('semiMajorAxis_m'),
    period_s: make('period_s'),
  };
}

/** How far the readings of each input carry a value up and down, in quadrature. */
function reachOf(
  value: number,
  inputs: readonly Values[][],
  name: keyof OrbitFigures,
): { up: number; down: number } {
  let up = 0;
  let down = 0;
  for (const readings of inputs) {
    const steps = readings.map((values) => values[name] - value).filter(Number.isFinite);
    up += Math.max(0, ...steps) ** 2;
    down += Math.min(0, ...steps) ** 2;
  }
  return { up: Math.sqrt(up), down: Math.sqrt(down) };
}

/** How long after the cutoff the coast is asked again. */
const COAST_S = 60;

/** The last point of the coast after axis point `i`, within a minute and above the air; null where there is none. */
export function laterInCoast(flight: Flight, i: number): number | null {
  const { time, gaps, dynamicPressure } = flight;
  let j = i;
  while (j + 1 < time.length && time[j + 1]! - time[i]! <= COAST_S && gaps.burn[j] === -1) {
    if (dynamicPressure[j + 1]! > 0.5) break;
    j++;
  }
  return j > i ? j : null;
}

/** What rounding leaves open about altitude and its rate at axis point `i`, 95 %. */
export function roundingHalves(flight: Flight, i: number): { altitude_m: number; rate_m_s: number } {
  const { altitude, verticalSpeed } = flight.log.channels;
  if (flight.log.resolution.altitude === undefined || altitude === undefined)
    return { altitude_m: 0, rate_m_s: 0 };
  const step = localStep(flight.log.time, altitude, flight.time[i]! + flight.liftOffLogTime_s);
  if (flight.cutoffs.some((c) => c.index === i && Number.isFinite(c.verticalSpeed_m_s)))
    return { altitude_m: step.height / 2, rate_m_s: 0 };
  // A standing error of half a step is not averaged away. Where changes are rare the rate is open to about a step
  // between them; where they come often their instants tell it, as well as the smoothing sees beside a burn's edge.
  let rate = 0;
  if (verticalSpeed === undefined && step.spacing_s > 0)
    rate =
      step.spacing_s < SLOW_STAIR_S
        ? NORMAL_95 * flight.noise.verticalSpeed_m_s * edgeExcess(flight)(i)
        : step.height / step.spacing_s;
  return { altitude_m: step.height / 2, rate_m_s: rate };
}

/** From so long between two steps on, a display's stairs tell no rate between them, s. */
const SLOW_STAIR_S = 6;

interface State {
  readonly r: number;
  readonly up: number;
  readonly across: number;
}

function elements(flight: Flight, track: GroundTrack, i: number, s: State): Values {
  const course = track.course[i]!;
  const latitude = track.latitude[i]!;
  return valuesOf(flight, s, course, latitude);
}

function valuesOf(flight: Flight, s: State, course: number, latitude: number): Values {
  const { world } = flight.mission;
  const east = s.across * Math.sin(course) + world.spin_rad_s * s.r * Math.cos(latitude);
  const north = s.across * Math.cos(course);
  const orbit: PlanarOrbit = orbitFromPlanarState(world.mu_m3_s2, s.r, s.up, Math.hypot(east, north));
  // Spherical trigonometry: cos i = cos(latitude)·sin(inertial course).
  const inclination = Math.acos(
    Math.max(-1, Math.min(1, Math.cos(latitude) * Math.sin(Math.atan2(east, north)))),
  );
  return {
    apoapsisAltitude_m: orbit.apoapsisRadius_m - world.radius_m,
    periapsisAltitude_m: orbit.periapsisRadius_m - world.radius_m,
    eccentricity: orbit.eccentricity,
    inclination_deg: (inclination * 180) / Math.PI,
    semiMajorAxis_m: orbit.semiMajorAxis_m,
    period_s: orbit.period_s ?? Number.NaN,
  };
}

/** A reading of what card and log leave open about the launch site, as the path's direction and latitude. */
export interface SiteReading {
  readonly what: string;
  readonly course: number;
  readonly latitude: number;
}

/** Where the launch site is open: no help from the world's turning, and an equator's whole help. */
export function siteReadings(flight: Flight, i: number): SiteReading[] {
  const { site, world } = flight.mission;
  const placed =
    flight.log.channels.latitude !== undefined || flight.log.channels.inertialSpeed !== undefined;
  if (placed || world.spin_rad_s === 0 || (site.latitudeKnown && site.azimuthKnown)) return [];
  const what = site.latitudeKnown ? 'launch azimuth unknown' : 'launch latitude and azimuth unknown';
  const latitude = site.latitudeKnown ? flight.track.latitude[i]! : 0;
  return [
    { what, course: 0, latitude: site.latitudeKnown ? latitude : Math.PI / 2 },
    { what, course: Math.PI / 2, latitude },
  ];
}

/** Horizontal inertial speed at axis point `i` on a site reading, m/s. */
export function inertialAcross_m_s(flight: Flight, i: number, reading: SiteReading): number {
  const across = flight.horizontalSpeed[i]!;
  const turning = flight.mission.world.spin_rad_s * flight.radius[i]! * Math.cos(reading.latitude);
  return Math.hypot(across * Math.sin(reading.course) + turning, across * Math.cos(reading.course));
}
