import type { Vehicle } from '../mission/types.ts';
import { massAbove_kg } from '../mission/vehicle.ts';
import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';
import type { MassDrop } from './types.ts';

/** What each mass drop was, and which stage each burn belongs to. */
export interface Staging {
  readonly drops: readonly { readonly kind: MassDrop['kind']; readonly subject: string | null }[];
  readonly stageOfBurn: readonly number[];
}

interface Candidate {
  readonly kind: MassDrop['kind'];
  readonly subject: string | null;
  readonly mass_kg: number;
}

/**
 * Names drops and stages in order of time. With a card, a drop is the candidate (stage, booster group, jettison)
 * whose mass it fits best, a stage being allowed to carry unburnt propellant away; without one, a drop under
 * thrust is a booster separation and any other a stage separation. `stageChannel` (1-based numbers as logged,
 * per burn, null = unlogged) overrules the count of separations.
 */
export function nameStages(
  t: Float64Array,
  mass: Float64Array | null,
  burns: readonly RawBurn[],
  drops: readonly GapDrop[],
  vehicle: Vehicle | null,
  stageChannel: readonly (number | null)[],
): Staging {
  let stage = vehicle === null || mass === null ? 0 : stageAtStart(vehicle, mass[0]!);
  const gone = new Set<string>();
  const named: { kind: MassDrop['kind']; subject: string | null }[] = [];
  const stageAfter: { time_s: number; stage: number }[] = [];
  for (const drop of drops) {
    const at = t[drop.gap]!;
    const powered = burns.some((b) => b.start_s < at && b.end_s > t[drop.gap + 1]!);
    const best = vehicle === null ? null : bestFit(vehicle, stage, gone, drop.mass_kg, powered);
    const kind = best?.kind ?? (powered ? 'booster-separation' : 'separation');
    named.push({ kind, subject: best?.subject ?? null });
    if (best?.subject != null && kind !== 'separation') gone.add(best.subject);
    if (kind === 'separation') {
      stage++;
      stageAfter.push({ time_s: at, stage });
    }
  }
  const first = vehicle === null || mass === null ? 0 : stageAtStart(vehicle, mass[0]!);
  const count = vehicle?.stages.length ?? Number.POSITIVE_INFINITY;
  const stageOfBurn = burns.map((burn, k) => {
    const told = stageChannel[k];
    if (told !== null && told !== undefined && told >= 1) return Math.min(told - 1, count - 1);
    // Without a mass channel each burn is taken to be the next stage's.
    if (mass === null) return Math.min(k, count - 1);
    let s = first;
    for (const after of stageAfter)
      if (after.time_s < burn.end_s - 1e-9 && after.time_s <= burn.start_s) s = after.stage;
    return Math.min(s, count - 1);
  });
  return { drops: named, stageOfBurn };
}

/** The lowest stage whose full stack could weigh what the log begins with (2 % allowed for the card's errors). */
function stageAtStart(vehicle: Vehicle, mass_kg: number): number {
  for (let s = vehicle.stages.length - 1; s > 0; s--) {
    const stage = vehicle.stages[s]!;
    const above = massAbove_kg(vehicle, s);
    if (above === null || stage.dryMass_kg === null || stage.propellantMass_kg === null) continue;
    if (mass_kg <= (above + stage.dryMass_kg + stage.propellantMass_kg) * 1.02) return s;
  }
  return 0;
}

function bestFit(
  vehicle: Vehicle,
  stage: number,
  gone: ReadonlySet<string>,
  mass_kg: number,
  powered: boolean,
): Candidate | null {
  const candidates: Candidate[] = [];
  const current = vehicle.stages[stage];
  if (current !== undefined && current.dryMass_kg !== null && !powered && stage + 1 < vehicle.stages.length) {
    candidates.push({ kind: 'separation', subject: current.name, mass_kg: current.dryMass_kg });
  }
  for (const booster of current?.boosters ?? []) {
    if (gone.has(booster.name)) continue;
    candidates.push({
      kind: 'booster-separation',
      subject: booster.name,
      mass_kg: booster.count * booster.dryMass_kg,
    });
  }
  for (const jettison of vehicle.jettisons) {
    if (!gone.has(jettison.name))
      candidates.push({ kind: 'jettison', subject: jettison.name, mass_kg: jettison.mass_kg });
  }
  let best: Candidate | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const ratio = mass_kg / candidate.mass_kg;
    // A stage may take unburnt propellant along, so only being lighter than its dry mass counts fully.
    const misfit =
      candidate.kind === 'separation' && ratio > 1 ? 0.2 * Math.log(ratio) : Math.abs(Math.log(ratio));
    if (misfit < least) {
      least = misfit;
      best = candidate;
    }
  }
  return best;
}
