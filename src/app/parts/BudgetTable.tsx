import type { Review } from '../../review/types.ts';
import { timeText } from '../figureText.ts';
import { FigureTable } from './FigureTable.tsx';
import { TermsButton } from './Term.tsx';

/** The budget of METHODS §5 at the end of the ascent. */
export function BudgetTable({ review }: { readonly review: Review }) {
  const { budget, orbit } = review;
  const unit = 'm/s';
  return (
    <section aria-label="Budget">
      <div class="head-line">
        <h2>
          Budget{' '}
          <span class="quiet">
            {orbit.cutoff_s === null ? 'at the end' : `at cutoff, ${timeText(orbit.cutoff_s)}`}
          </span>
        </h2>
        <TermsButton
          of="the budget"
          labels={[
            'spent',
            'to go',
            'left aboard',
            'margin',
            'projected total',
            'vehicle’s whole delta-v',
            'shortfall',
          ]}
        />
      </div>
      <FigureTable
        lines={[
          { label: 'spent', figure: budget.deltaVSpent, unit },
          { label: 'to go', figure: budget.deltaVToGo, unit },
          { label: 'left aboard', figure: budget.deltaVRemaining, unit },
          { label: 'margin', figure: budget.margin, unit },
          { label: 'projected total', figure: budget.projectedTotal, unit },
          { label: 'vehicle’s whole delta-v', figure: budget.vehicleDeltaV, unit },
          ...(budget.shortfall.value ? [{ label: 'shortfall', figure: budget.shortfall, unit }] : []),
        ]}
      />
    </section>
  );
}
