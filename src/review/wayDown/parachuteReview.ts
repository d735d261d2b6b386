import { indexAt } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import { airDeceleration } from '../../flight/wayDown/airDeceleration.ts';
import { bodyMass_kg, type ParachuteDescent } from '../../flight/wayDown/parachutes.ts';
import { terminalSpeed_m_s } from '../../flight/wayDown/terminalSpeed.ts';
import { bareDragArea_m2, parachutesDragArea_m2 } from '../../mission/returnAreas.ts';
import { gravity_m_s2 } from '../../world/gravity.ts';
import { figure, unavailable } from '../figure.ts';
import type { Figure } from '../types.ts';
import type { DescentReview, ParachuteReview } from './types.ts';

/** The parachutes' figures, found in a descent from axis point `from`. */
export function parachuteReview(flight: Flight, from: number, found: ParachuteDescent): ParachuteReview {
  const { time, altitude, speed, dynamicPressure, noise, mission } = flight;
  const open = indexAt(time, found.open_s);
  const full = found.full_s === null ? null : indexAt(time, found.full_s);
  const unseen = unavailable('they were out before the air could be felt');
  const seen = (value: number, sigma: number): Figure =>
    found.openedBefore ? unseen : figure(value, sigma, 'derived');
  const air = airDeceleration(flight, from);
  let most = open;
  for (let i = open; i < time.length; i++) {
    const a = air.deceleration[i]!;
    if (Number.isFinite(a) && !(a <= (air.deceleration[most] ?? Number.NaN))) most = i;
  }
  const plans = mission.returnVehicle?.parachutes ?? [];
  const mass = bodyMass_kg(flight, open);
  const planned = (key: 'openAltitude_m' | 'fullAltitude_m', pick: (...v: number[]) => number) => {
    const given = plans.map((p) => p[key]).filter((h) => h !== null);
    return given.length === 0 ? null : pick(...given);
  };
  return {
    open_s: found.open_s,
    full_s: found.full_s,
    inflation: found.inflation,
    openedBefore: found.openedBefore,
    openAltitude_m: seen(altitude[open]!, Math.max(noise.altitude_m, stepAround(altitude, open) / 2)),
    openSpeed_m_s: seen(speed[open]!, noise.speed_m_s),
    openDynamicPressure_Pa: seen(
      dynamicPressure[open]!,
      (2 * dynamicPressure[open]! * noise.speed_m_s) / Math.max(1, speed[open]!),
    ),
    fullAltitude_m:
      full === null
        ? unavailable(notFull(found.inflation, mass))
        : seen(altitude[full]!, Math.max(noise.altitude_m, stepAround(altitude, full) / 2)),
    peakLoad_m_s2: {
      figure: figure(air.deceleration[most]!, air.sigma_m_s2, 'derived'),
      time_s: time[most]!,
      altitude_m: altitude[most]!,
      speed_m_s: speed[most]!,
    },
    dragArea_m2:
      mass === null
        ? unavailable('neither log nor card tells the mass under them')
        : figure(found.reached_m2_kg * mass, areaShare(flight) * found.reached_m2_kg * mass, 'identified'),
    plannedOpenAltitude_m: planned('openAltitude_m', Math.max),
    plannedFullAltitude_m: planned('fullAltitude_m', Math.min),
  };
}

/** Share by which an identified drag area may be off at least, by the air's density alone. */
const AREA_SHARE = 0.02;

/** One-sigma share of the drag area: noise in the slow speed under a canopy counts twice, and always one way. */
function areaShare({ time, speed, noise }: Flight): number {
  let i = time.length - 1;
  while (i > 0 && speed[i]! < 5 * noise.speed_m_s) i--;
  return Math.hypot(AREA_SHARE, (noise.speed_m_s / Math.max(1, speed[i]!)) ** 2);
}

/** Why there is no time of full inflation. */
function notFull(inflation: ParachuteDescent['inflation'], mass_kg: number | null): string {
  if (inflation === 'partial') return 'the drag area never comes up to the card’s';
  return mass_kg === null
    ? 'neither log nor card tells the mass under them: whether they fill cannot be told'
    : 'the card gives no drag area of parachutes: whether they fill cannot be told';
}

function stepAround(altitude: Float64Array, i: number): number {
  return Math.abs(altitude[Math.max(0, i - 1)]! - altitude[Math.min(altitude.length - 1, i + 1)]!) / 2;
}

/** Seconds before the ground over which the rate of descent is taken. */
const LAST_S = 10;
/** So near the ground a noisy channel's smoothing already feels the stop, s. */
const SMOOTHED_S = 4;

/** Rate of descent in the last seconds of an unpowered fall that ends at axis point `end`. */
export function descentReview(flight: Flight, end: number, canopy: boolean): DescentReview | null {
  const { time, altitude, verticalSpeed, noise, mission, density } = flight;
  let sum = 0;
  let weight = 0;
  let middle = 0;
  const skipped = noise.speed_m_s > 0.02 || noise.verticalSpeed_m_s > 0.02 ? SMOOTHED_S : 0;
  for (let i = end; i > 0 && time[end]! - time[i - 1]! <= LAST_S + 1 + skipped; i--) {
    const dt = time[i]! - time[i - 1]!;
    if (time[end]! - time[i]! < skipped) continue;
    // The row of the touchdown itself already stands still.
    if (Math.abs(verticalSpeed[i]!) < 0.5 * Math.abs(verticalSpeed[i - 1]!)) continue;
    sum += ((verticalSpeed[i]! + verticalSpeed[i - 1]!) / 2) * dt;
    weight += dt;
    middle = i;
  }
  if (weight < 2) return null;
  const rate = -sum / weight;
  return {
    rate_m_s: figure(rate, noise.verticalSpeed_m_s / Math.sqrt(Math.max(1, weight)), 'derived'),
    altitude_m: altitude[middle]!,
    expected_m_s: expectedRate(flight, middle, density, mission, canopy),
  };
}

function expectedRate(
  flight: Flight,
  i: number,
  density: Float64Array,
  mission: Flight['mission'],
  canopy: boolean,
): Figure {
  const body = mission.returnVehicle;
  if (body === null) return unavailable('the card has no return');
  const mass = body.mass_kg ?? bodyMass_kg(flight, i);
  if (mass === null) return unavailable('the card’s return has no mass');
  if (density[i]! <= 0) return unavailable('there is no air');
  const bare = bareDragArea_m2(body);
  const canopies = parachutesDragArea_m2(body);
  const area = canopy ? bare + canopies : bare;
  if (!(area > 0) || (canopy && canopies === 0)) return unavailable('the card gives no drag area');
  const value = terminalSpeed_m_s(mass, gravity_m_s2(mission.world, flight.radius[i]!), density[i]!, area);
  return figure(value, 0, 'assumed');
}
