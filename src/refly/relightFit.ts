import type { AscentShape } from './ascentShape.ts';
import { constrainedMinimum } from './constrainedMinimum.ts';
import type { TrialFlights } from './trialFlights.ts';

const HEIGHT_UNIT_M = 1000;

/**
 * Turns a transfer into two flown burns: finds the speed to leave missing and the vertical speed at the second
 * ignition with which the second burn, level and stopped at the target's energy, ends in the target orbit's
 * apoapsis without climb. Null where that fails.
 */
export function fitRelight(trials: TrialFlights, transfer: AscentShape): AscentShape | null {
  const { target, world } = trials.frame;
  if (transfer.ending.kind !== 'transfer' || target.kind !== 'orbit') return null;
  const { apoapsisAltitude_m } = target;
  const { missing_m_s } = transfer.ending;
  const shapeOf = (x: Float64Array): AscentShape => ({
    ...transfer,
    ending: { kind: 'relight', missing_m_s: missing_m_s + x[0]!, climb_m_s: x[1]! },
  });
  const fit = constrainedMinimum(
    {
      size: 2,
      constraints: 2,
      lower: Float64Array.of(-0.5 * missing_m_s, -100),
      upper: Float64Array.of(0.5 * missing_m_s + 1, 500),
      evaluate: (x, c) => {
        const outcome = trials.fly(shapeOf(x));
        if (outcome === null) return Number.NaN;
        c[0] = (outcome.radius_m - world.radius_m - apoapsisAltitude_m) / HEIGHT_UNIT_M;
        c[1] = outcome.verticalSpeed_m_s;
        return 0;
      },
    },
    [0, 0.1],
    { difference: 1e-3, met: 1e-4, longestStep: 20 },
  );
  return fit.miss < 1e-2 ? shapeOf(fit.x) : null;
}
