import type { Flight } from '../flight/types.ts';
import type { QualityNote } from '../log/types.ts';

/** A coast must be this high above the ground and this long to weigh a world by. */
const LONG_ENOUGH_S = 20;
/** Misfit of the free fall that is told. */
const TOLD_SHARE = 0.05;

/**
 * Checks the world against free fall: in a coast above the air the vertical speed must fall as gravity less the
 * centrifugal part of the inertial motion says. Null when it fits or there is no such coast.
 */
export function worldCheck(flight: Flight): QualityNote | null {
  const { time, gaps, radius, verticalSpeed, track, mission, dynamicPressure } = flight;
  const mu = mission.world.mu_m3_s2;
  let from = -1;
  let best: { measured: number; expected: number; from: number; to: number } | null = null;
  for (let i = flight.liftOffIndex + 1; i <= time.length; i++) {
    const free =
      i < time.length && gaps.burn[i - 1] === -1 && dynamicPressure[i]! < 5 && dynamicPressure[i - 1]! < 5;
    if (free) {
      if (from === -1) from = i - 1;
      continue;
    }
    if (from !== -1) {
      const to = i - 1;
      const span = time[to]! - time[from]!;
      if (span >= LONG_ENOUGH_S && (best === null || span > time[best.to]! - time[best.from]!)) {
        let expected = 0;
        for (let k = from + 1; k <= to; k++) {
          const r = radius[k]!;
          const v = track.inertialHorizontalSpeed[k]!;
          expected += ((v * v) / r - mu / (r * r)) * (time[k]! - time[k - 1]!);
        }
        best = {
          measured: (verticalSpeed[to]! - verticalSpeed[from]!) / span,
          expected: expected / span,
          from,
          to,
        };
      }
      from = -1;
    }
  }
  if (best === null) return null;
  const g = mu / radius[best.from]! ** 2;
  const misfit = best.measured - best.expected;
  if (Math.abs(misfit) < TOLD_SHARE * g) return null;
  const range = `${time[best.from]!.toFixed(0)}–${time[best.to]!.toFixed(0)} s`;
  return {
    code: 'world-misfit',
    channel: 'altitude',
    rows: null,
    count: 1,
    text: `In the coast of ${range} the vertical speed changes by ${best.measured.toFixed(2)} m/s², but free fall on ${mission.world.name} would be ${best.expected.toFixed(2)} m/s²: is this the right world?`,
  };
}
