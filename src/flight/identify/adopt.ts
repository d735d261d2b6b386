import type { Mission, Vehicle } from '../../mission/types.ts';
import type { Burn } from '../types.ts';
import { columnOf } from './equation.ts';
import { factorSigma, type VehicleFit } from './identifyVehicle.ts';
import { statedShares } from './unknowns.ts';

/** Why the identified values stand in the books, or why they do not. */
export type AdoptionReason = 'card-holds' | 'card-silent' | 'card-unsure' | 'card-contradicted' | 'poor-fit';

/** Speed that the card's values may leave unexplained before the log overrules them: m/s and share of ideal. */
const ALLOWED_M_S = 3;
const ALLOWED_SHARE = 0.001;
/** A fit that leaves more than this, m/s and in one-sigma errors of the speed, explains nothing. */
const POOR_M_S = 5;
const POOR_SIGMAS = 5;

/**
 * The card's values stand while the log bears them out. The identified ones take their place where the card
 * lacks a value, says that it is not sure, or leaves more speed unexplained than a card's last digit can.
 */
export function adoption(
  fit: VehicleFit,
  mission: Mission,
  ideal_m_s: number,
  speedSigma_m_s: number,
): AdoptionReason {
  if (fit.rms_m_s > Math.max(POOR_M_S, POOR_SIGMAS * speedSigma_m_s)) return 'poor-fit';
  if (statedShares(mission) !== null) return 'card-unsure';
  if (cardLacks(fit)) return 'card-silent';
  const explains = fit.rms_m_s < Math.max(1.5 * speedSigma_m_s, 0.3 * fit.cardRms_m_s);
  return fit.cardMiss_m_s > ALLOWED_M_S + ALLOWED_SHARE * ideal_m_s && explains
    ? 'card-contradicted'
    : 'card-holds';
}

/** True where a value that the equation of motion needs is not on the card. */
export function cardLacks(fit: Pick<VehicleFit, 'engines' | 'drag'>): boolean {
  return fit.engines.some((e) => !e.ispOnCard || !e.areaOnCard) || (fit.drag !== null && !fit.drag.onCard);
}

/** The burns with the identified engines; a logged thrust keeps its say where the card had no specific impulse. */
export function burnsAsIdentified(burns: readonly Burn[], fit: VehicleFit, thrustLogged: boolean): Burn[] {
  const n = fit.engines.length;
  return burns.map((burn, b) => ({
    ...burn,
    segments: burn.segments.map((segment, s) => {
      const e = fit.engineOf[b]![s]!;
      const engine = fit.engines[e]!;
      const isp = (segment.isp_s ?? engine.ispReference_s) * fit.factors[columnOf.isp(e)]!;
      const area = (segment.exitArea_m2 ?? engine.areaReference_m2) * fit.factors[columnOf.area(e, n)]!;
      return { ...segment, isp_s: segment.isp_s === null && thrustLogged ? null : isp, exitArea_m2: area };
    }),
  }));
}

/** The card's vehicle with the identified specific impulses, for what could still be had; null stays null. */
export function vehicleAsIdentified(vehicle: Vehicle | null, fit: VehicleFit): Vehicle | null {
  if (vehicle === null) return null;
  const n = fit.engines.length;
  return {
    ...vehicle,
    stages: vehicle.stages.map((stage, s) => {
      const e = fit.engines.findIndex((engine) => engine.stage === s && engine.stretch === 0);
      if (e === -1) return stage;
      const engine = fit.engines[e]!;
      const factor = fit.factors[columnOf.isp(e)]!;
      return {
        ...stage,
        ispVacuum_s: engine.ispReference_s * factor,
        exitArea_m2: engine.areaReference_m2 * fit.factors[columnOf.area(e, n)]!,
        boosters: stage.boosters.map((b) => ({ ...b, ispVacuum_s: b.ispVacuum_s * factor })),
      };
    }),
  };
}

/** One-sigma share by which an adopted specific impulse of a stage may be off; 0 where the card's stands. */
export function ispShare(
  identified: { readonly fit: VehicleFit; readonly adopted: boolean } | null,
  stage: number,
): number {
  if (identified === null || !identified.adopted) return 0;
  const { fit } = identified;
  const e = fit.engines.findIndex((engine) => engine.stage === stage);
  // A stage that never burnt is as sure as any that did before the log told of it.
  if (e === -1) return Math.max(0, ...fit.engines.map((engine) => engine.ispShare));
  const c = columnOf.isp(e);
  return factorSigma(fit, c) / Math.max(1e-9, fit.factors[c]!);
}
