import { indexAt } from '../../flight/events.ts';
import type { Flight } from '../../flight/types.ts';
import type { PoweredLanding } from '../../flight/wayDown/powered.ts';
import { figure, unavailable } from '../figure.ts';
import { spentIn } from '../orbitWork/orbitWork.ts';
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

/** Greatest speed in the last second before rest, m/s. */
export function speedBefore(flight: Flight, time_s: number): number {
  const { time, speed } = flight;
  const end = indexAt(time, time_s);
  let fastest = 0;
  for (let i = end; i >= 0 && time[end]! - time[i]! <= 1; i--) fastest = Math.max(fastest, speed[i]!);
  return fastest;
}
