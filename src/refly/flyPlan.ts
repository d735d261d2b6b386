import { LossbookError } from '../errors.ts';
import { buildFlight } from '../flight/buildFlight.ts';
import type { Flight } from '../flight/types.ts';
import { type AscentSpan, ascentSpan } from '../ledger/ascentEnd.ts';
import { type Budget, budgetAlong } from '../ledger/budget.ts';
import { type LossCurves, lossCurves } from '../ledger/lossCurves.ts';
import type { Mission } from '../mission/types.ts';
import { planOfFlight } from '../plan/planOfFlight.ts';
import type { Plan } from '../plan/types.ts';
import { Ascent } from './ascent.ts';
import type { Program } from './controls.ts';
import { timeTable } from './controls.ts';
import { planProgram } from './planProgram.ts';
import { rocketOf } from './rocketOf.ts';
import { simulatedLog } from './simulatedLog.ts';

/** A simulated flight, understood and booked like a flown one. */
export interface BookedFlight {
  readonly flight: Flight;
  readonly span: AscentSpan;
  readonly ground: LossCurves;
  readonly budget: Budget;
  /** `impact` = it came down before its program was done. */
  readonly end: 'flown' | 'impact' | 'stalled';
}

/** The plan flown by the mission's rocket with its payload. */
export interface FlownPlan extends BookedFlight {
  readonly plan: Plan;
  /** One sentence for each thing taken as given because plan or card do not say it. */
  readonly assumed: readonly string[];
}

/**
 * Flies a plan with the vehicle and payload of the mission's card (METHODS §6).
 * @param flown the flight under review, whose pitch stands in where the plan gives none
 * @throws LossbookError `plan-not-flyable` where card or plan lack what flying takes
 */
export function flyPlan(plan: Plan, mission: Mission, flown: Flight | null): FlownPlan {
  if (mission.vehicle === null)
    throw new LossbookError(
      'plan-not-flyable',
      { reason: 'no mission card gives the vehicle', next: 'give a card with its stages' },
      { file: plan.name },
    );
  const { rocket, missing, assumed } = rocketOf(mission.vehicle);
  if (rocket === null)
    throw new LossbookError(
      'plan-not-flyable',
      { reason: `the mission card lacks ${missing.join(', ')}`, next: 'add them to the card' },
      { file: plan.name },
    );
  const program = planProgram(plan, rocket, mission, flown === null ? null : pitchOf(flown));
  const ascent = new Ascent(mission.world, rocket, { carryLosses: false });
  const { log, result } = simulatedLog(ascent, program, plan.name);
  return { plan, ...booked(log, mission), end: result.end, assumed: [...plan.assumed, ...assumed] };
}

/** Books a log as the review does, without its figures. */
export function booked(log: Flight['log'], mission: Mission): Omit<BookedFlight, 'end'> {
  const flight = buildFlight(log, mission);
  const span = ascentSpan(flight);
  const ground = lossCurves(flight, span.start, span.end, 'ground');
  return { flight, span, ground, budget: budgetAlong(flight, span, ground.ideal) };
}

function pitchOf(flown: Flight): Program | null {
  const { axisValues, pitch_rad } = planOfFlight(flown);
  return pitch_rad === null || axisValues.length === 0 ? null : timeTable(axisValues, pitch_rad);
}
