import type { Vehicle } from '../mission/types.ts';
import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';

/**
 * Where cutoff and separation fall into one gap of the log, no plateau shows the mass at cutoff. The card's dry
 * mass splits them: mass before the drop = mass after it + the stage's dry mass (METHODS §2).
 */
export function hiddenEdges(
  t: Float64Array,
  mass: Float64Array | null,
  burns: readonly RawBurn[],
  drops: readonly GapDrop[],
  vehicle: Vehicle | null,
  stageOfBurn: readonly number[],
): RawBurn[] {
  return burns.map((burn, k) => {
    if (mass === null || burn.endsAfterLog) return burn;
    const drop = drops.find((d) => d.gap === burn.last);
    if (drop === undefined) return burn;
    const stageIndex = stageOfBurn[k]!;
    const stage = vehicle?.stages[stageIndex];
    const flow = flowBefore(t, mass, burn);
    if (flow <= 0) return burn;
    const after = mass[burn.last + 1]!;
    const dry = stage?.dryMass_kg ?? null;
    // The next stage, if already lit in this gap, burns too little to matter beside the first one's flow.
    const endMass = dry !== null ? after + dry : null;
    if (endMass === null || endMass > mass[burn.last]!) return burn;
    const end_s = Math.min(t[burn.last + 1]!, t[burn.last]! + (mass[burn.last]! - endMass) / flow);
    return { ...burn, end_s, endMass_kg: endMass };
  });
}

function flowBefore(t: Float64Array, mass: Float64Array, burn: RawBurn): number {
  const from = Math.max(burn.first, burn.last - 5);
  const dt = t[burn.last]! - t[from]!;
  return dt > 0 ? (mass[from]! - mass[burn.last]!) / dt : 0;
}
