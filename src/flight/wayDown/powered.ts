import { indexAt } from '../events.ts';
import type { Burn, Flight } from '../types.ts';

/** A landing under thrust. */
export interface PoweredLanding {
  readonly burn: Burn;
  readonly startAltitude_m: number;
  readonly startSpeed_m_s: number;
  /** Speed that was there to lose, and what gravity put back meanwhile (∫g·sin γ dt, positive), m/s. */
  readonly speedLost_m_s: number;
  readonly gravityLoss_m_s: number;
  /** Time spent nearly still above the ground, and gravity's take in it. */
  readonly hover_s: number;
  readonly hoverLoss_m_s: number;
}

/** A burn that ends this long before touchdown, at most, is the landing's. */
const LAST_S = 5;
/** Slower than this, above the ground, is hovering. */
const HOVER_M_S = 3;
/** Slower than this the path has no direction worth the name. */
const STILL_M_S = 0.5;

/** The burn that ends at the touchdown; null for a landing without one. */
export function poweredLanding(flight: Flight, touchdown_s: number): PoweredLanding | null {
  const { time, speed, verticalSpeed, radius, altitude, mission } = flight;
  const burn = flight.burns.findLast((b) => b.start_s < touchdown_s);
  if (burn === undefined || burn.end_s < touchdown_s - LAST_S || burn === flight.burns[0]) return null;
  const end = Math.min(burn.endIndex, indexAt(time, touchdown_s));
  let gravity = 0;
  let hover_s = 0;
  let hoverLoss = 0;
  for (let i = burn.startIndex; i < end; i++) {
    const dt = time[i + 1]! - time[i]!;
    const v = Math.max(0.1, (speed[i]! + speed[i + 1]!) / 2);
    // Standing still the thrust carries the whole weight, whatever the path's direction.
    const still = v < STILL_M_S;
    const sink = Math.max(-1, Math.min(1, -(verticalSpeed[i]! + verticalSpeed[i + 1]!) / 2 / v));
    const g = mission.world.mu_m3_s2 / radius[i]! ** 2;
    gravity += g * (still ? 1 : sink) * dt;
    if (v < HOVER_M_S && altitude[i]! > altitude[end]! + 2) {
      hover_s += dt;
      hoverLoss += g * dt;
    }
  }
  return {
    burn,
    startAltitude_m: altitude[burn.startIndex]!,
    startSpeed_m_s: speed[burn.startIndex]!,
    speedLost_m_s: speed[burn.startIndex]! - speed[end]!,
    gravityLoss_m_s: gravity,
    hover_s,
    hoverLoss_m_s: hoverLoss,
  };
}
