import { indexAt } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import type { PoweredLanding } from '../../flight/wayDown/powered.ts';
import { median } from '../../log/statistics.ts';
import { figure, unavailable } from '../figure.ts';
import { spentIn } from '../spentIn.ts';
import type { PoweredLandingReview } from './types.ts';

/** A powered landing's figures. */
export function landingReview(flight: Flight, found: PoweredLanding): PoweredLandingReview {
  const { noise } = flight;
  const spent = spentIn(flight, found.burn);
  const pathSigma = noise.speed_m_s + noise.verticalSpeed_m_s;
  return {
    start_s: found.burn.start_s,
    end_s: found.burn.end_s,
    startAltitude_m: found.startAltitude_m,
    startSpeed_m_s: found.startSpeed_m_s,
    deltaV_m_s: spent === null ? unavailable('the engine is not known') : figure(spent, 0, 'derived'),
    speedLost_m_s: figure(found.speedLost_m_s, noise.speed_m_s, 'measured'),
    gravityLoss_m_s: figure(found.gravityLoss_m_s, pathSigma, 'derived'),
    hover_s: found.hover_s,
    hoverLoss_m_s: figure(found.hoverLoss_m_s, 0, 'derived'),
  };
}

/**
 * Speed just before rest, m/s: the middle of the log's own rows (smoothing would feel the stop) in the last second
 * in which it still moved.
 */
export function speedBefore(flight: Flight, time_s: number): number {
  const raw = flight.log.channels.speed;
  const time = raw === undefined ? flight.time : flight.log.time;
  const speed = raw ?? flight.speed;
  const zero = raw === undefined ? 0 : flight.liftOffLogTime_s;
  const still = Math.max(1, 5 * flight.noise.speed_m_s);
  let last = indexAt(time, time_s + zero);
  while (last > 0 && !(speed[last]! > still)) last--;
  const moving: number[] = [];
  for (let i = last; i >= 0 && (time[last]! - time[i]! <= 1 || moving.length < 3); i--) {
    if (Number.isFinite(speed[i]!)) moving.push(speed[i]!);
  }
  return median(moving);
}
