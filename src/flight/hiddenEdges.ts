import type { Vehicle } from '../mission/types.ts';
import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';

/**
 * Where cutoff or ignition falls into one gap of the log with the separation, no plateau shows its mass. The
 * card's dry mass splits them: mass before the drop = mass after it + the stage's dry mass (METHODS §2).
 */
export function hiddenEdges(
  t: Float64Array,
  mass: Float64Array | null,
  burns: readonly RawBurn[],
  drops: readonly GapDrop[],
  vehicle: Vehicle | null,
  stageOfBurn: readonly number[],
): RawBurn[] {
  return burns.map((burn, k) =>
    hiddenStart(
      t,
      mass,
      hiddenEnd(t, mass, burn, drops, dryMass(stageOfBurn[k]!)),
      drops,
      dryMass(stageOfBurn[k]! - 1),
    ),
  );

  function dryMass(stage: number): number | null {
    return vehicle?.stages[stage]?.dryMass_kg ?? null;
  }
}

function hiddenEnd(
  t: Float64Array,
  mass: Float64Array | null,
  burn: RawBurn,
  drops: readonly GapDrop[],
  dry_kg: number | null,
): RawBurn {
  if (mass === null || dry_kg === null || burn.endsAfterLog || !drops.some((d) => d.gap === burn.last))
    return burn;
  const flow = flowInside(t, mass, burn, burn.last, -1);
  // The next stage, if already lit in this gap, burns too little to matter beside the first one's flow.
  const endMass = mass[burn.last + 1]! + dry_kg;
  if (flow <= 0 || endMass > mass[burn.last]!) return burn;
  const end_s = Math.min(t[burn.last + 1]!, t[burn.last]! + (mass[burn.last]! - endMass) / flow);
  return { ...burn, end_s, endMass_kg: endMass };
}

function hiddenStart(
  t: Float64Array,
  mass: Float64Array | null,
  burn: RawBurn,
  drops: readonly GapDrop[],
  dry_kg: number | null,
): RawBurn {
  if (
    mass === null ||
    dry_kg === null ||
    burn.startsBeforeLog ||
    !drops.some((d) => d.gap === burn.first - 1)
  )
    return burn;
  const flow = flowInside(t, mass, burn, burn.first, 1);
  const startMass = mass[burn.first - 1]! - dry_kg;
  if (flow <= 0 || startMass < mass[burn.first]!) return burn;
  const start_s = Math.max(t[burn.first - 1]!, t[burn.first]! - (startMass - mass[burn.first]!) / flow);
  return { ...burn, start_s, startMass_kg: startMass };
}

/** Flow over up to five samples from `row` into the burn, kg/s. */
function flowInside(t: Float64Array, mass: Float64Array, burn: RawBurn, row: number, into: -1 | 1): number {
  const far = Math.max(burn.first, Math.min(burn.last, row + 5 * into));
  const dt = Math.abs(t[far]! - t[row]!);
  return dt > 0 ? Math.abs(mass[far]! - mass[row]!) / dt : 0;
}
