import type { Flight } from '../../flight/types.ts';
import type { AscentSpan } from '../../ledger/ascentEnd.ts';
import { orbitAt } from '../../ledger/ascentEnd.ts';
import { speedAtApsis } from '../../orbit/transfers.ts';
import { figure, unavailable } from '../figure.ts';
import { orbitFigures } from '../orbitFigures.ts';
import { spentFigure, spentIn } from '../spentIn.ts';
import type { DeorbitReview } from './types.ts';

/** The last burn that took periapsis from above the orbit floor to below it; null without one. */
export function deorbitReview(flight: Flight, span: AscentSpan): DeorbitReview | null {
  const { world } = flight.mission;
  const floor = world.radius_m + world.orbitFloor_m;
  const burn = flight.burns.findLast(
    (b) =>
      (flight.startsInFlight || b.startIndex > span.end) &&
      orbitAt(flight, b.startIndex).periapsisRadius_m >= floor &&
      orbitAt(flight, b.endIndex).periapsisRadius_m < floor,
  );
  if (burn === undefined) return null;
  const before = orbitFigures(flight, burn.startIndex).periapsisAltitude_m;
  const after = orbitFigures(flight, burn.endIndex).periapsisAltitude_m;
  const spent = spentIn(flight, burn);
  const start = orbitAt(flight, burn.startIndex);
  const high = start.apoapsisRadius_m;
  const goal = orbitAt(flight, burn.endIndex).periapsisRadius_m;
  const optimum = Number.isFinite(high)
    ? speedAtApsis(world.mu_m3_s2, high, start.periapsisRadius_m) - speedAtApsis(world.mu_m3_s2, high, goal)
    : null;
  const unknown = unavailable('the engine is not known');
  const lowered = (before.value ?? Number.NaN) - (after.value ?? Number.NaN);
  return {
    start_s: burn.start_s,
    end_s: burn.end_s,
    deltaV_m_s: spentFigure(flight, burn),
    periapsisBefore_m: before,
    periapsisAfter_m: after,
    perDeltaV_m_per_m_s: spent === null || spent === 0 ? unknown : figure(lowered / spent, 0, 'derived'),
    optimum_m_s:
      optimum === null
        ? unavailable('the orbit before is open')
        : figure(optimum, flight.noise.speed_m_s / 2, 'derived'),
  };
}
