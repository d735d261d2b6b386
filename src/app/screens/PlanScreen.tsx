import { useState } from 'preact/hooks';
import { unbroken } from '../../exchange/sentence.ts';
import { formatFigure } from '../../units/figures.ts';
import { Joined } from '../parts/Joined.tsx';
import { PlanActions } from '../plan/PlanActions.tsx';
import { PlanCurves } from '../plan/PlanCurves.tsx';
import { Contributions, PlanAssumed, PlanBudget, PlanCutoffs, PlanEvents } from '../plan/PlanTables.tsx';
import { planLine } from '../plan/planLine.ts';
import { current } from '../state.ts';
import { inUnits } from '../units.ts';

/** The flight against its plan, flown by the same rocket with the same payload. */
export function PlanScreen() {
  const [more, setMore] = useState(false);
  const open = current.value;
  if (open === null) return null;
  const { review } = open.analysis;
  const plan = review.againstPlan;
  if (plan === null) {
    return (
      <div class="further plan-screen">
        <p class="context">
          <Joined text={open.source.title} />
        </p>
        <h1 tabIndex={-1}>This flight has no plan to be held against.</h1>
        <p class="detail">
          A plan is a table of pitch and throttle against time, altitude or speed, a full profile, or another
          flight’s log. Choose its file here, or search the best ascent of the same rocket, payload and
          target: it becomes the plan.
        </p>
        <PlanActions />
      </div>
    );
  }
  const kg = plan.avoidable.propellant_kg.value;
  return (
    <div class="further plan-screen">
      <p class="context">
        <Joined text={`${open.source.title} · plan: ${plan.plan.name}`} />
      </p>
      <h1 tabIndex={-1}>{unbroken(inUnits(planLine(plan)))}</h1>
      <p class="detail">
        {unbroken(inUnits(plan.plan.text))}
        {kg === null || Math.abs(kg) < 0.5
          ? ''
          : ` The difference is worth ${formatFigure(Math.abs(kg), { decimals: 0 })} kg of propellant at cutoff.`}
      </p>
      <PlanActions />
      <PlanCurves review={review} />
      <div class={more ? 'tables with-more' : 'tables'}>
        <button type="button" class="plain more-switch" aria-pressed={more} onClick={() => setMore(!more)}>
          Intervals, states and masses
        </button>
        <div class="pair">
          <div>
            <Contributions plan={plan} />
            <PlanBudget review={review} />
            <PlanAssumed plan={plan} />
          </div>
          <div>
            <PlanCutoffs plan={plan} />
          </div>
        </div>
        <PlanEvents plan={plan} />
      </div>
    </div>
  );
}
