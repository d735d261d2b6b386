import { figure, unavailable } from '../review/figure.ts';
import { valueAt } from '../review/sampleAt.ts';
import type { Figure, Review, Strips } from '../review/types.ts';
import { curveOf, pathOf } from './attempt.ts';
import type { Attempt } from './types.ts';

/**
 * The plan of a review, as flown by the same rocket, in the form of an attempt, to hold others against; null where
 * the review has none. A best ascent reviewed as the plan serves alike. What a plan does not tell is unavailable.
 */
export function planAttemptOf(
  review: Review,
  planStrips: Strips | null = null,
  name = 'the plan',
): Attempt | null {
  const { againstPlan, mission, ledger } = review;
  if (againstPlan === null) return null;
  const { planned, plannedCurves } = againstPlan;
  const end_s = againstPlan.cutoffs.reduce(
    (latest, { states }) => Math.max(latest, states.time_s.planned ?? latest),
    Number.NEGATIVE_INFINITY,
  );
  const until_s = Number.isFinite(end_s) ? end_s : ledger.end_s;
  const told = (value: number | null): Figure =>
    value === null ? unavailable('the plan does not tell it') : figure(value, 0, 'derived');
  const none = unavailable('the plan’s losses are not kept');
  return {
    name,
    pilot: null,
    vehicle: mission.vehicle,
    mission: mission.name,
    world: mission.world,
    target: mission.target,
    payload_kg: mission.payload_kg,
    attempt: null,
    date: null,
    verdict: { code: 'undetermined', text: againstPlan.plan.text },
    scores: {
      margin_m_s: told(planned.margin),
      projectedTotal_m_s: told(planned.projectedTotal),
      spent_m_s: told(planned.spent),
      toGo_m_s: told(planned.toGo),
      remaining_m_s: none,
      gravity_m_s: none,
      drag_m_s: none,
      steering_m_s: none,
      backPressure_m_s: none,
      propellantLeft_kg: none,
    },
    habits: {
      pitchOverTime_s: againstPlan.events.find((e) => e.name === 'pitch-over')?.time_s.planned ?? null,
      pitchOverAngle_deg: null,
      thrustToWeightAtMaxQ: null,
      angleOfAttackInAir_deg: null,
      cutoffError_m_s: null,
    },
    phases: [],
    curve: curveOf(plannedCurves, until_s),
    path: pathOf(planStrips, until_s),
    events: againstPlan.events.flatMap((e) => {
      const time_s = e.time_s.planned;
      const spent = time_s === null ? null : valueAt(plannedCurves.time_s, plannedCurves.spent, time_s);
      return time_s === null || spent === null ? [] : [{ name: e.name, spent_m_s: spent, time_s }];
    }),
  };
}
