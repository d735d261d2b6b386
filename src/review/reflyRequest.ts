import { buildFlight } from '../flight/buildFlight.ts';
import { ascentSpan } from '../ledger/ascentEnd.ts';
import { budgetAlong } from '../ledger/budget.ts';
import { lossCurves } from '../ledger/lossCurves.ts';
import { planOfAscent } from '../plan/planOfAscent.ts';
import type { Plan } from '../plan/types.ts';
import { bestAscent, type SearchOptions } from '../refly/bestAscent.ts';
import { reflyFlight } from '../refly/reflyFlight.ts';
import { type ReviewRequest, readRequest } from './readRequest.ts';
import { reviewLog } from './reviewFlight.ts';
import type { AgainstPlan } from './types.ts';

/** A flight flown again: by its own controls, against a plan, and as well as its rocket can. */
export interface Refly {
  readonly schema: 'lossbook-refly/1';
  readonly file: string;
  readonly card: string | null;
  readonly vehicle: string | null;
  /** Margin of the logged flight at the ascent's end, m/s; null where the card does not tell. */
  readonly flownMargin_m_s: number | null;
  /** Model less log at the last cutoff, flown by the log's own controls. */
  readonly asFlown:
    | {
        readonly time_s: number;
        readonly speedError_m_s: number;
        readonly altitudeError_m: number;
        readonly assumed: readonly string[];
      }
    | { readonly reason: string };
  /** Null where no plan was given. */
  readonly againstPlan: AgainstPlan | null;
  /** Null where it was not asked for. */
  readonly best:
    | {
        readonly margin_m_s: number;
        readonly reachesTarget: boolean;
        readonly relit: boolean;
        readonly insertion_s: number;
        readonly maxDynamicPressure_Pa: number;
        readonly maxAcceleration_m_s2: number;
        readonly trials: number;
        readonly assumed: readonly string[];
      }
    | { readonly reason: string }
    | null;
}

export interface ReflyRequest extends ReviewRequest {
  /** Search the best ascent of the same rocket, target and limits. */
  readonly best?: boolean;
}

/** The document, and the best ascent as a plan where one was found. */
export interface ReflyResult {
  readonly refly: Refly;
  readonly bestPlan: Plan | null;
}

/**
 * Flies a flight again (METHODS §7).
 * @throws LossbookError for input that cannot be read or from which nothing can be derived.
 */
export async function reflyRequest(
  request: ReflyRequest,
  options: Pick<SearchOptions, 'onProgress' | 'signal'> = {},
): Promise<ReflyResult> {
  const { mission, log, plan } = await readRequest(request);
  const flight = buildFlight(log, mission);
  const span = ascentSpan(flight);
  const budget = budgetAlong(flight, span, lossCurves(flight, span.start, span.end, 'ground').ideal);
  const again = reflyFlight(flight);
  const found = request.best ? bestAscent(mission, options) : null;
  const name = `${request.log.name.replace(/\.[^.]*$/u, '')}.best`;
  const refly: Refly = {
    schema: 'lossbook-refly/1',
    file: request.log.name,
    card: request.card?.name ?? null,
    vehicle: mission.vehicle?.name ?? null,
    flownMargin_m_s: budget.margin?.[budget.atEnd] ?? null,
    asFlown:
      again.kind === 'unavailable'
        ? { reason: again.reason }
        : {
            time_s: again.error.time_s,
            speedError_m_s: again.error.speed_m_s,
            altitudeError_m: again.error.altitude_m,
            assumed: again.assumed,
          },
    againstPlan: plan === null ? null : (await reviewLog(log, mission, null, plan)).review.againstPlan,
    best:
      found === null
        ? null
        : found.kind === 'found'
          ? {
              margin_m_s: found.margin_m_s,
              reachesTarget: found.reachesTarget,
              relit: found.relit,
              insertion_s: found.result.time_s,
              maxDynamicPressure_Pa: found.peaks.dynamicPressure_Pa,
              maxAcceleration_m_s2: found.peaks.acceleration_m_s2,
              trials: found.trials,
              assumed: found.assumed,
            }
          : { reason: found.kind === 'stopped' ? 'the search was stopped' : found.reason },
  };
  return { refly, bestPlan: found?.kind === 'found' ? planOfAscent(found.plan, name) : null };
}
