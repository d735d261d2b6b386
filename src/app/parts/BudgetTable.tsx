import type { Figure, Review } from '../../review/types.ts';
import { timeText } from '../figureText.ts';
import { FigureCells } from './FigureCells.tsx';
import { useMore } from './MoreSwitch.tsx';

interface Line {
  readonly label: string;
  readonly figure: Figure;
  readonly unit: string;
  readonly scale?: number;
  readonly decimals?: number;
}

function Lines({ lines }: { readonly lines: readonly Line[] }) {
  return (
    <table class="figures">
      <thead class="unseen-head">
        <tr>
          <th scope="col">figure</th>
          <th scope="col" class="number">
            value
          </th>
          <th scope="col">unit</th>
          <th scope="col" class="number more">
            95 %
          </th>
          <th scope="col" class="more basis">
            basis
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map(({ label, ...cells }) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <FigureCells {...cells} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The budget of METHODS §5 at the end of the ascent, and the orbit that was reached. */
export function BudgetTable({ review }: { readonly review: Review }) {
  const more = useMore();
  const { budget, orbit } = review;
  const at = orbit.atCutoff;
  const unit = 'm/s';
  const money: Line[] = [
    { label: 'spent', figure: budget.deltaVSpent, unit },
    { label: 'to go', figure: budget.deltaVToGo, unit },
    { label: 'left aboard', figure: budget.deltaVRemaining, unit },
    { label: 'margin', figure: budget.margin, unit },
    { label: 'projected total', figure: budget.projectedTotal, unit },
    { label: 'vehicle’s whole delta-v', figure: budget.vehicleDeltaV, unit },
    ...(budget.shortfall.value === null || budget.shortfall.value === 0
      ? []
      : [{ label: 'shortfall', figure: budget.shortfall, unit }]),
  ];
  const path: Line[] = [
    { label: 'apoapsis', figure: at.apoapsisAltitude_m, unit: 'km', scale: 1e-3 },
    { label: 'periapsis', figure: at.periapsisAltitude_m, unit: 'km', scale: 1e-3 },
    { label: 'eccentricity', figure: at.eccentricity, unit: '', decimals: 4 },
    { label: 'inclination', figure: at.inclination_deg, unit: '°' },
    { label: 'period', figure: at.period_s, unit: 'min', scale: 1 / 60 },
  ];
  return (
    <div class={more.className}>
      <section aria-label="Budget">
        <h2>
          Budget{' '}
          <span class="quiet">
            {orbit.cutoff_s === null ? 'at the end' : `at cutoff, ${timeText(orbit.cutoff_s)}`}
          </span>
        </h2>
        <Lines lines={money} />
      </section>
      <section aria-label="Orbit at cutoff">
        <h2>
          Orbit <span class="quiet">{orbit.cutoff_s === null ? 'at the end' : 'at cutoff'}</span>
        </h2>
        <Lines lines={path} />
      </section>
      {more.button}
    </div>
  );
}
