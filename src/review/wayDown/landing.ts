import { linearRegression, linearRegressionLine } from 'simple-statistics';
import { indexAt } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import type { PoweredLanding } from '../../flight/wayDown/powered.ts';
import { median } from '../../log/statistics.ts';
import { figure } from '../figure.ts';
import { spentFigure } from '../spentIn.ts';
import type { PoweredLandingReview } from './types.ts';

/** A powered landing's figures. */
export function landingReview(flight: Flight, found: PoweredLanding): PoweredLandingReview {
  const { noise } = flight;
  const pathSigma = noise.speed_m_s + noise.verticalSpeed_m_s;
  return {
    start_s: found.burn.start_s,
    end_s: found.burn.end_s,
    startAltitude_m: found.startAltitude_m,
    startSpeed_m_s: found.startSpeed_m_s,
    deltaV_m_s: spentFigure(flight, found.burn),
    speedLost_m_s: figure(found.speedLost_m_s, noise.speed_m_s, 'measured'),
    gravityLoss_m_s: figure(found.gravityLoss_m_s, pathSigma, 'derived'),
    hover_s: found.hover_s,
    hoverLoss_m_s: figure(found.hoverLoss_m_s, 0, 'derived'),
  };
}

/**
 * Speed just before rest, m/s: the middle of the log's own rows (smoothing would feel the stop) in the last second
 * in which it still moved. Where the log ends in motion no row feels the stop: there the straight line through that
 * second tells the speed at its end, for a vehicle that brakes is slower by then.
 */
export function speedBefore(flight: Flight, time_s: number, rests: boolean): number {
  const raw = flight.log.channels.speed;
  const time = raw === undefined ? flight.time : flight.log.time;
  const speed = raw ?? flight.speed;
  const zero = raw === undefined ? 0 : flight.liftOffLogTime_s;
  const still = Math.max(1, 5 * flight.noise.speed_m_s);
  let last = indexAt(time, time_s + zero);
  while (last > 0 && !(speed[last]! > still)) last--;
  const moving: number[][] = [];
  for (let i = last; i >= 0 && (time[last]! - time[i]! <= 1 || moving.length < 3); i--) {
    if (Number.isFinite(speed[i]!)) moving.push([time[i]! - time[last]!, speed[i]!]);
  }
  if (!rests && moving.length >= 3) return Math.max(0, linearRegressionLine(linearRegression(moving))(0));
  return median(moving.map((row) => row[1]!));
}
