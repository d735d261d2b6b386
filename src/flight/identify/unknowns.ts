import type { Mission, Stage } from '../../mission/types.ts';
import { dragArea_m2 } from '../../mission/vehicle.ts';
import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import type { Burn } from '../types.ts';

/**
 * What the identification looks for (METHODS §3). Every unknown is a factor on a reference value, the card's where
 * the card has one, so that a prior is always "1, give or take a share".
 */

/** Engines that burn alike: those of a stage, or of a stretch of a burn where no card tells them apart. */
export interface EngineUnknown {
  readonly stage: number;
  /** Which stretch of the burn, where boosters drop and no card tells what remains; 0 otherwise. */
  readonly stretch: number;
  /** Isp and exit area that a factor of 1 stands for. */
  readonly ispReference_s: number;
  readonly areaReference_m2: number;
  /** One-sigma shares of the priors. */
  readonly ispShare: number;
  readonly areaShare: number;
  readonly ispOnCard: boolean;
  readonly areaOnCard: boolean;
}

export interface DragUnknown {
  /** Mach numbers of the hat functions. */
  readonly mach: readonly number[];
  readonly commonShare: number;
  readonly nodeShare: number;
  readonly onCard: boolean;
  /** Drag area that factors of 1 stand for, m², at each axis point. */
  readonly reference_m2: Float64Array;
}

/** One-sigma shares by which a card's values may be off; `dragNode`: one node of its drag curve by itself. */
export interface CardShares {
  readonly isp: number;
  readonly exitArea: number;
  readonly dragArea: number;
  readonly dragNode: number;
}

/** A card that does not say how sure it is: what a data sheet may be off by. */
export const USUAL_SHARES: CardShares = { isp: 0.005, exitArea: 0.2, dragArea: 0.1, dragNode: 0.03 };
/** What the card has is held to it, as long as only what it lacks is looked for. */
export const HELD_SHARES: CardShares = { isp: 1e-5, exitArea: 1e-4, dragArea: 1e-4, dragNode: 1e-5 };
/** One node of the drag curve against its neighbours without a card. */
const OPEN_NODE_SHARE = 0.25;
/** Without a card: chemical engines lie between some 200 and 460 s; drag areas within a factor of a few. */
const OPEN_ISP_S = 310;
const OPEN_ISP_SHARE = 0.3;
const OPEN_DRAG_SHARE = 1;
/**
 * Without a card: p·Ae/Tvac at the ground, i.e. 1 − Isp(sea level)/Isp(vacuum), is near 0.09 for engines made for
 * the ground (0.06 to 0.13 for common ones; from memory).
 */
const OPEN_BACK_SHARE = 0.09;
const OPEN_AREA_SHARE = 0.6;

/** Mach numbers of the hat functions: close where the drag of a slender body turns. */
const NODES = [0, 0.6, 0.85, 1.05, 1.3, 2, 3, 4, 8] as const;
/** Drag coefficient of a slender body at the nodes, for its shape only (Hoerner 1965 in outline; from memory). */
const SLENDER = [0.3, 0.3, 0.36, 0.55, 0.51, 0.4, 0.31, 0.26, 0.25] as const;
/** Frontal area of a rocket from its mass: about 0.0015·m^(2/3), kg and m² (thirty-odd launchers; from memory). */
const AREA_PER_MASS = 0.0015;

/** How sure the card says it is of the vehicle's values; null where it says nothing. */
export function statedShares(mission: Mission): CardShares | null {
  const stated = mission.vehicle?.standardErrors;
  if (stated === undefined) return null;
  return {
    isp: Math.max(1e-5, stated.isp ?? USUAL_SHARES.isp),
    exitArea: Math.max(1e-4, stated.exitArea ?? USUAL_SHARES.exitArea),
    dragArea: Math.max(1e-4, stated.dragArea ?? USUAL_SHARES.dragArea),
    dragNode: Math.max(1e-5, 0.3 * (stated.dragArea ?? USUAL_SHARES.dragArea)),
  };
}

/**
 * The engines of the flight's burns, each with its reference values, and which of them burns in each stretch:
 * `of[b][s]` is the engine of burn b's segment s.
 */
export function engineUnknowns(
  mission: Mission,
  burns: readonly Burn[],
  surfacePressure_Pa: number,
  shares: CardShares,
): { engines: EngineUnknown[]; of: number[][] } {
  const engines: EngineUnknown[] = [];
  const of = burns.map((burn) => {
    const stage: Stage | null = mission.vehicle?.stages[burn.stage] ?? null;
    return burn.segments.map((segment, s) => {
      const stretch = segment.isp_s === null ? s : 0;
      const known = engines.findIndex((e) => e.stage === burn.stage && e.stretch === stretch);
      if (known !== -1) return known;
      const isp = segment.isp_s ?? OPEN_ISP_S;
      const area = stage?.exitArea_m2 ?? null;
      const flow = meanFlow_kg_s(burn);
      const open =
        surfacePressure_Pa > 0
          ? (OPEN_BACK_SHARE * flow * STANDARD_GRAVITY_M_S2 * isp) / surfacePressure_Pa
          : 0;
      engines.push({
        stage: burn.stage,
        stretch,
        ispReference_s: stage?.ispVacuum_s ?? isp,
        // A card that says 0 means it: its engine's factor is on next to nothing.
        areaReference_m2: Math.max(area ?? open, 1e-9),
        ispShare: segment.isp_s === null ? OPEN_ISP_SHARE : shares.isp,
        areaShare: area === null ? OPEN_AREA_SHARE : shares.exitArea,
        ispOnCard: segment.isp_s !== null,
        // Without air an exit area has nothing to do.
        areaOnCard: area !== null || surfacePressure_Pa === 0,
      });
      return engines.length - 1;
    });
  });
  return { engines, of };
}

/** The drag curve's unknowns; null on a world without air. */
export function dragUnknowns(
  mission: Mission,
  stage: Int16Array,
  mach: Float64Array,
  startMass_kg: number,
  shares: CardShares,
): DragUnknown | null {
  if (mission.world.atmosphere === null) return null;
  const stages = mission.vehicle?.stages ?? [];
  const guess = AREA_PER_MASS * startMass_kg ** (2 / 3);
  let fastest = 0;
  for (const m of mach) if (m > fastest) fastest = m;
  const count = Math.max(2, NODES.findIndex((m) => m >= fastest) + 1 || NODES.length);
  const nodes = NODES.slice(0, count);
  let onCard = true;
  const reference = new Float64Array(mach.length);
  for (let i = 0; i < mach.length; i++) {
    const shape = stages[stage[i]!];
    const area = shape === undefined ? null : dragArea_m2(shape, mach[i]!);
    if (area === null && mach[i]! > 0) onCard = false;
    reference[i] = area ?? guess * slenderAt(mach[i]!);
  }
  return {
    mach: nodes,
    commonShare: onCard ? shares.dragArea : OPEN_DRAG_SHARE,
    nodeShare: onCard ? shares.dragNode : OPEN_NODE_SHARE,
    onCard,
    reference_m2: reference,
  };
}

/** Hat functions at a Mach number: the node at or below it, and the share of the next one. */
export function hatAt(nodes: readonly number[], mach: number): { node: number; next: number } {
  let k = 0;
  while (k + 1 < nodes.length && nodes[k + 1]! <= mach) k++;
  if (k + 1 >= nodes.length) return { node: nodes.length - 1, next: 0 };
  return { node: k, next: Math.max(0, (mach - nodes[k]!) / (nodes[k + 1]! - nodes[k]!)) };
}

function slenderAt(mach: number): number {
  const { node, next } = hatAt(NODES, mach);
  return SLENDER[node]! + next * ((SLENDER[node + 1] ?? SLENDER[node]!) - SLENDER[node]!);
}

function meanFlow_kg_s(burn: Burn): number {
  if (burn.startMass_kg === null || burn.endMass_kg === null) return 0;
  return (burn.startMass_kg - burn.endMass_kg) / Math.max(1e-3, burn.end_s - burn.start_s);
}
