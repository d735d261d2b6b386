import type { FlightEvent } from '../flight/events.ts';
import { peakAltitudeIndex } from '../flight/peakAltitude.ts';
import type { Flight } from '../flight/types.ts';
import { figure, unavailable } from './figure.ts';
import type { Review } from './types.ts';
import { decimal } from './wording.ts';

/** Touchdown faster than this is called hard; common practice for parachute recovery, no source. */
const HARD_M_S = 12;

/** What the log shows of the way back down. */
export function returnOf(flight: Flight, events: readonly FlightEvent[]): Review['return'] {
  const n = flight.time.length;
  const touchdown = events.find((e) => e.name === 'touchdown');
  const none = (reason: string) => unavailable(reason);
  if (touchdown !== undefined) {
    const speed = speedBefore(flight, touchdown.index);
    const code = speed > HARD_M_S ? 'landed-hard' : 'landed';
    return {
      code,
      text: `Touchdown at ${decimal(touchdown.time_s, 0)} s with ${decimal(speed, 1)} m/s${code === 'landed-hard' ? ': hard' : ''}.`,
      touchdownSpeed_m_s: figure(speed, flight.noise.speed_m_s, 'measured'),
    };
  }
  const peak = flight.altitude[peakAltitudeIndex(flight)]!;
  const last = flight.altitude[n - 1]!;
  const falling = flight.verticalSpeed[n - 1]! < -10;
  if (falling && last < 0.02 * peak && flight.speed[n - 1]! > 50) {
    return {
      code: 'lost',
      text: `The log ends at ${decimal(last, 0)} m, falling at ${decimal(flight.speed[n - 1]!, 0)} m/s: it did not land.`,
      touchdownSpeed_m_s: none('it did not land'),
    };
  }
  if (last < 0.5 * peak)
    return {
      code: 'not-logged',
      text: 'The log ends on the way down.',
      touchdownSpeed_m_s: none('the log ends before the ground'),
    };
  return {
    code: 'not-flown',
    text: 'The log holds no way down.',
    touchdownSpeed_m_s: none('the log holds no way down'),
  };
}

/** Greatest speed in the last second before rest, m/s. */
function speedBefore(flight: Flight, index: number): number {
  let fastest = 0;
  for (let i = index; i >= 0 && flight.time[index]! - flight.time[i]! <= 1; i--)
    fastest = Math.max(fastest, flight.speed[i]!);
  return fastest;
}
