import type { Mission } from '../mission/types.ts';
import { formatHeight, formatKm } from './wording.ts';

/** The target in one line. */
export function targetLine(mission: Mission): string {
  const { target } = mission;
  if (target.kind === 'orbit') {
    const shape = `${formatKm(target.apoapsisAltitude_m, false)} × ${formatKm(target.periapsisAltitude_m)}`;
    return mission.targetKnown
      ? `orbit ${shape} ± ${formatKm(target.tolerance_m)}`
      : `lowest orbit above the floor, ${shape}`;
  }
  if (target.kind === 'suborbital')
    return `peak altitude ${formatHeight(target.peakAltitude_m)} ± ${formatHeight(target.tolerance_m)}`;
  if (target.kind === 'escape') return `escape with C3 ${(target.c3_m2_s2 / 1e6).toFixed(3)} km²/s²`;
  return 'landing';
}
