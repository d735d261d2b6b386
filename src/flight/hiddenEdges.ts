import type { Vehicle } from '../mission/types.ts';
import { massAbove_kg } from '../mission/vehicle.ts';
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
  if (mass === null || vehicle === null) return [...burns];
  return burns.map((burn, k) => {
    const stage = stageOfBurn[k]!;
    return hiddenStart(hiddenEnd(burn, stage), stage - 1);
  });

  function hiddenEnd(burn: RawBurn, stage: number): RawBurn {
    const dry = vehicle!.stages[stage]?.dryMass_kg ?? null;
    if (dry === null || burn.endsAfterLog || !drops.some((d) => d.gap === burn.last)) return burn;
    const inner = mass![burn.last]!;
    const flow = flowInside(t, mass!, burn, burn.last, -1);
    const endMass = (stackAfter(burn.last, stage) ?? mass![burn.last + 1]!) + dry;
    if (flow <= 0 || endMass > inner) return burn;
    const end_s = Math.min(t[burn.last + 1]!, t[burn.last]! + (inner - endMass) / flow);
    return { ...burn, end_s, endMass_kg: endMass };
  }

  function hiddenStart(burn: RawBurn, dropped: number): RawBurn {
    const dry = vehicle!.stages[dropped]?.dryMass_kg ?? null;
    if (dry === null || burn.startsBeforeLog || !drops.some((d) => d.gap === burn.first - 1)) return burn;
    const inner = mass![burn.first]!;
    const flow = flowInside(t, mass!, burn, burn.first, 1);
    const startMass = stackAfter(burn.first - 1, dropped) ?? mass![burn.first - 1]! - dry;
    if (flow <= 0 || startMass < inner) return burn;
    const start_s = Math.max(t[burn.first - 1]!, t[burn.first]! - (startMass - inner) / flow);
    return { ...burn, start_s, startMass_kg: startMass };
  }

  /** With one stage's last and the next one's first sample on both sides of a gap, only the card tells the rest. */
  function stackAfter(gap: number, stage: number): number | null {
    const both = burns.some((b) => b.last === gap) && burns.some((b) => b.first === gap + 1);
    return both ? massAbove_kg(vehicle!, stage) : null;
  }
}

/** Flow over up to five samples from `row` into the burn, kg/s. */
function flowInside(t: Float64Array, mass: Float64Array, burn: RawBurn, row: number, into: -1 | 1): number {
  const far = Math.max(burn.first, Math.min(burn.last, row + 5 * into));
  const dt = Math.abs(t[far]! - t[row]!);
  return dt > 0 ? Math.abs(mass[far]! - mass[row]!) / dt : 0;
}
