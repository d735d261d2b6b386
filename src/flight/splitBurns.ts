import type { Vehicle } from '../mission/types.ts';
import { massAbove_kg } from '../mission/vehicle.ts';
import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';

/**
 * In a coarsely sampled log cutoff, separation and the next ignition can fall into one gap, and two stages'
 * burns look like one. Where the mass falls across such a gap from above a stage's dry stack to below it, the
 * burn is cut in two there.
 */
export function splitAtStaging(
  t: Float64Array,
  mass: Float64Array | null,
  burns: readonly RawBurn[],
  drops: readonly GapDrop[],
  vehicle: Vehicle | null,
): RawBurn[] {
  if (mass === null || vehicle === null) return [...burns];
  let out = [...burns];
  for (const { gap } of drops) {
    if (!crossesStaging(vehicle, mass[gap]!, mass[gap + 1]!)) continue;
    out = out.flatMap((burn) => {
      if (!(burn.first < gap && burn.last > gap + 1)) return [burn];
      const middle = (t[gap]! + t[gap + 1]!) / 2;
      return [
        { ...burn, last: gap, end_s: middle, endMass_kg: mass[gap]!, endsAfterLog: false },
        { ...burn, first: gap + 1, start_s: middle, startMass_kg: mass[gap + 1]!, startsBeforeLog: false },
      ];
    });
  }
  return out;
}

function crossesStaging(vehicle: Vehicle, before_kg: number, after_kg: number): boolean {
  return vehicle.stages.some((stage, s) => {
    const above = massAbove_kg(vehicle, s);
    if (above === null || stage.dryMass_kg === null || s + 1 === vehicle.stages.length) return false;
    return before_kg >= above + 0.98 * stage.dryMass_kg && after_kg <= 1.005 * above;
  });
}
