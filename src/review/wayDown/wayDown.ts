import { comingDownIndex } from '../../flight/comingDown.ts';
import { type FlightEvent, indexAt } from '../../flight/events.ts';
import { peakAltitudeIndex } from '../../flight/peakAltitude.ts';
import type { Flight } from '../../flight/types.ts';
import { entryBetween } from '../../flight/wayDown/entry.ts';
import { findParachutes } from '../../flight/wayDown/parachutes.ts';
import { poweredLanding } from '../../flight/wayDown/powered.ts';
import type { AscentSpan } from '../../ledger/ascentEnd.ts';
import { figure, unavailable } from '../figure.ts';
import { decimal } from '../wording.ts';
import { deorbitReview } from './deorbit.ts';
import { entryReview } from './entryReview.ts';
import { landingReview, speedBefore } from './landing.ts';
import { descentReview, parachuteReview } from './parachuteReview.ts';
import type { ImpactReview, WayDownReview } from './types.ts';

/** Touchdown faster than this is called hard; common practice for parachute recovery, no source. */
const HARD_M_S = 12;
/** Faster than this near the ground nothing lands. */
const CRASH_M_S = 50;

/** What the log shows of the way back down (METHODS §8). */
export async function wayDownReview(
  flight: Flight,
  span: AscentSpan,
  events: readonly FlightEvent[],
): Promise<WayDownReview> {
  const { time, altitude } = flight;
  const n = time.length;
  const start = comingDownIndex(flight);
  const touchdown_s = touchdownOf(flight, events);
  const outcome = outcomeOf(flight, touchdown_s);
  if (start >= n - 1 || outcome.code === 'not-flown')
    return { ...outcome, ...noParts, deorbit: deorbitReview(flight, span) };
  const end = touchdown_s === null ? n - 1 : indexAt(time, touchdown_s);
  const canopy = findParachutes(flight, start);
  const entryFrom = firstInAir(flight, start);
  const entryTo = canopy === null ? end : Math.min(end, indexAt(time, canopy.open_s));
  const entry = canopy?.openedBefore ? null : entryBetween(flight, entryFrom, entryTo);
  const powered = touchdown_s === null ? null : poweredLanding(flight, touchdown_s);
  const from = fallStart(flight, start, entryFrom);
  const next = flight.burns.find((b) => b.startIndex > from);
  const ends: [number, ImpactReview['until']][] = [
    [end, touchdown_s === null ? 'end of the log' : 'ground'],
    ...(next === undefined ? [] : [[next.startIndex, 'burn'] as [number, ImpactReview['until']]]),
    ...(canopy === null || canopy.openedBefore
      ? []
      : [[entryTo, 'parachute-open'] as [number, ImpactReview['until']]]),
  ];
  const { impactReview } = await import('./impact.ts');
  const [to, until] = ends.reduce((a, b) => (b[0] < a[0] ? b : a));
  return {
    ...outcome,
    deorbit: deorbitReview(flight, span),
    impact: impactReview({ flight, from, to, until, identified: entry?.drag ?? null }),
    entry: entry === null ? null : entryReview(flight, entry),
    parachute: canopy === null ? null : parachuteReview(flight, start, canopy),
    descent:
      touchdown_s === null || powered !== null || altitude[start]! - altitude[end]! < 100
        ? null
        : descentReview(flight, end, canopy !== null),
    poweredLanding: powered === null ? null : landingReview(flight, powered),
  };
}

const noParts = {
  impact: null,
  entry: null,
  parachute: null,
  descent: null,
  poweredLanding: null,
} as const;

type Outcome = Pick<WayDownReview, 'code' | 'text' | 'touchdownSpeed_m_s' | 'touchdown_s'>;

function outcomeOf(flight: Flight, touchdown_s: number | null): Outcome {
  const n = flight.time.length;
  const peak = flight.altitude[peakAltitudeIndex(flight)]!;
  const last = flight.altitude[n - 1]!;
  const without = (code: Outcome['code'], text: string, reason: string): Outcome => ({
    code,
    text,
    touchdownSpeed_m_s: unavailable(reason),
    touchdown_s: null,
  });
  if (touchdown_s !== null) {
    const speed = speedBefore(flight, touchdown_s);
    const hard = speed > HARD_M_S;
    const logEnds = touchdown_s >= flight.time[n - 1]!;
    return {
      code: hard ? 'landed-hard' : 'landed',
      text: `${logEnds ? 'The log ends at the ground' : 'Touchdown'} at ${decimal(touchdown_s, 0)} s with ${decimal(speed, 1)} m/s${hard ? ': hard' : ''}.`,
      touchdownSpeed_m_s: figure(speed, flight.noise.speed_m_s, 'measured'),
      touchdown_s,
    };
  }
  const falling = flight.verticalSpeed[n - 1]! < -10;
  if (falling && last < 0.02 * peak && flight.speed[n - 1]! > CRASH_M_S) {
    return without(
      'lost',
      `The log ends at ${decimal(last, 0)} m, falling at ${decimal(flight.speed[n - 1]!, 0)} m/s: it did not land.`,
      'it did not land',
    );
  }
  if (last < 0.5 * peak)
    return without('not-logged', 'The log ends on the way down.', 'the log ends before the ground');
  return without('not-flown', 'The log holds no way down.', 'the log holds no way down');
}

/** The touchdown event, or the end of a log that stops at the ground itself. */
function touchdownOf(flight: Flight, events: readonly FlightEvent[]): number | null {
  const found = events.find((e) => e.name === 'touchdown');
  if (found !== undefined) return found.time_s;
  const { time, altitude, speed, verticalSpeed, noise } = flight;
  const n = time.length;
  if (flight.startsInFlight || n < 10) return null;
  const ground = altitude[flight.liftOffIndex]!;
  const step = Math.max(0.1, time[n - 1]! - time[n - 2]!);
  const near = Math.max(5, 3 * noise.altitude_m, -2 * step * verticalSpeed[n - 1]!);
  const down = verticalSpeed[n - 1]! < -0.5 && speed[n - 1]! <= CRASH_M_S;
  return down && Math.abs(altitude[n - 1]! - ground) <= near ? time[n - 1]! : null;
}

function firstInAir(flight: Flight, start: number): number {
  const top = flight.mission.world.atmosphere?.top_m ?? Number.POSITIVE_INFINITY;
  let i = start;
  while (i < flight.time.length - 1 && flight.altitude[i]! > top) i++;
  return i;
}

/** Thinner than this the air does nothing to a rising body that a descent's drag would have to answer for, Pa. */
const THIN_PA = 10;

/** Axis point after the last burn or separation above the air, or the peak of a flight that never left it. */
function fallStart(flight: Flight, start: number, entryFrom: number): number {
  let from = -1;
  for (const burn of flight.burns) {
    if (burn.endIndex <= entryFrom && flight.dynamicPressure[burn.endIndex]! < THIN_PA)
      from = Math.max(from, burn.endIndex);
  }
  for (const drop of flight.drops) {
    if (drop.index < entryFrom && drop.index >= from && from >= 0) from = drop.index + 1;
  }
  return from >= 0 ? from : Math.min(start, peakAltitudeIndex(flight));
}
