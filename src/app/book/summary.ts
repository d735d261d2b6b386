import type { Review } from '../../review/types.ts';
import type { FlightSummary } from './types.ts';

/** What the logbook shows of a review. */
export function summaryOf({ verdict, budget, mission }: Review): FlightSummary {
  return {
    verdictCode: verdict.code,
    verdict: verdict.text,
    margin_m_s: budget.margin.value,
    mission: mission.name,
    world: mission.world,
    vehicle: mission.vehicle,
    pilot: mission.pilot,
    attempt: mission.attempt,
    date: mission.date,
  };
}
