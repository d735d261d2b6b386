import type { Plan } from '../plan/types.ts';
import type { Contributions } from '../refly/contributions.ts';
import { contributions } from '../refly/contributions.ts';
import { type FlownPlan, flyPlan } from '../refly/flyPlan.ts';
import { againstPlan, type FlownSide } from './againstPlan.ts';
import { contributionFigures } from './contributionFigures.ts';
import { makeStrips } from './strips.ts';
import type { AgainstPlan, Strips } from './types.ts';

/** Everything of a review that comes from its plan. */
export interface PlanPart {
  readonly flown: FlownPlan;
  readonly strips: Strips;
  readonly contributions: Contributions | null;
  readonly document: AgainstPlan;
}

/** Flies the plan with the mission's rocket and compares. @throws LossbookError `plan-not-flyable` */
export function planPart(side: FlownSide, plan: Plan): PlanPart {
  const { flight, span, budget } = side;
  const flown = flyPlan(plan, flight.mission, flight);
  const total = totalOf(budget);
  const planned = totalOf(flown.budget);
  const found =
    total === null || planned === null
      ? null
      : contributions(flight.mission, flight, total, flown.flight, planned, holds(flown));
  return {
    flown,
    strips: makeStrips(flown.flight, flown.ground),
    contributions: found,
    document: againstPlan(side, flown, contributionFigures(flight, span, found)),
  };
}

/** To go at the plan's end, as a share of what was spent, with which it has reached its target. */
const REACHED_SHARE = 0.005;

function holds({ budget }: FlownPlan): boolean {
  const spent = budget.spent?.[budget.atEnd];
  const toGo = budget.toGo?.[budget.atEnd];
  return spent !== undefined && toGo !== undefined && toGo < REACHED_SHARE * spent;
}

/** Projected total at the end of an ascent, m/s. */
function totalOf({ spent, toGo, atEnd }: FlownSide['budget']): number | null {
  const s = spent?.[atEnd];
  const c = toGo?.[atEnd];
  return s === undefined || c === undefined ? null : s + c;
}
