import { comingDownIndex } from '../../flight/comingDown.ts';
import type { FlightEvent } from '../../flight/events.ts';
import { peakAltitudeIndex } from '../../flight/peakAltitude.ts';
import type { Flight } from '../../flight/types.ts';
import type { AscentSpan } from '../../ledger/ascentEnd.ts';
import { figure, unavailable } from '../figure.ts';
import type { Finding } from '../types.ts';
import { decimal } from '../wording.ts';
import { deorbitReview } from './deorbit.ts';
import { speedBefore } from './landing.ts';
import type { WayDownReview } from './types.ts';

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
  const n = flight.time.length;
  const start = comingDownIndex(flight);
  const touchdown_s = touchdownOf(flight, events);
  const outcome = outcomeOf(flight, touchdown_s);
  if (start >= n - 1 || outcome.code === 'not-flown')
    return { ...outcome, ...noParts, deorbit: deorbitReview(flight, span) };
  // Few logs hold it: its reader is loaded with the first that does.
  const { flownDown } = await import('./flownDown.ts');
  return {
    ...outcome,
    deorbit: deorbitReview(flight, span),
    ...flownDown(flight, start, touchdown_s),
  };
}

/** What was wrong on the way down; nothing where the log holds none of it. */
export async function wayDownFaults(flight: Flight, way: WayDownReview): Promise<Finding[]> {
  if (way.code === 'not-flown' && way.deorbit === null) return [];
  return (await import('./flownDown.ts')).wayDownFindings(flight, way);
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
    const logEnds = touchdown_s >= flight.time[n - 1]!;
    const speed = speedBefore(flight, touchdown_s, !logEnds);
    const hard = speed > HARD_M_S;
    return {
      code: hard ? 'landed-hard' : 'landed',
      text: `${logEnds ? 'The log ends at the ground' : 'Touchdown'} at ${decimal(touchdown_s, 0)} s with ${decimal(speed, 1)} m/s${hard ? ': hard' : ''}.`,
      touchdownSpeed_m_s: figure(speed, flight.noise.speed_m_s, 'measured'),
      touchdown_s,
    };
  }
  const falling = flight.verticalSpeed[n - 1]! < -10;
  if (falling && last < 0.02 * peak && flight.speed[n - 1]! > CRASH_M_S) {
    const falling_m_s = `falling at ${decimal(flight.speed[n - 1]!, 0)} m/s`;
    return without(
      'lost',
      atGround(flight)
        ? `The log ends at the ground, ${falling_m_s}: a crash.`
        : `The log ends at ${decimal(last, 0)} m, ${falling_m_s}: it did not land.`,
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
  const { time, speed, verticalSpeed } = flight;
  const n = time.length;
  if (n < 10) return null;
  const down = verticalSpeed[n - 1]! < -0.5 && speed[n - 1]! <= CRASH_M_S;
  return down && atGround(flight) ? time[n - 1]! : null;
}

/** True where the log's last row is within two rows' fall of the ground that it left. */
function atGround({ time, altitude, verticalSpeed, noise, ...flight }: Flight): boolean {
  if (flight.startsInFlight) return false;
  const n = time.length;
  const ground = altitude[flight.liftOffIndex]!;
  const step = Math.max(0.1, time[n - 1]! - time[n - 2]!);
  const near = Math.max(5, 3 * noise.altitude_m, -2 * step * verticalSpeed[n - 1]!);
  return Math.abs(altitude[n - 1]! - ground) <= near;
}
