import { intervalText, massForm, numberText, shown, valueText } from '../../exchange/figureText.ts';
import type { Review, ReviewBurn } from '../../review/types.ts';
import { speedIn } from '../units.ts';

/** A narrow screen leaves time and propellant out where there is a delta-v to show instead. */
function lesserLook({ deltaV }: ReturnType<typeof told>): string {
  return deltaV ? 'number more' : 'number';
}

function BurnRow({
  burn,
  columns,
}: {
  readonly burn: ReviewBurn;
  readonly columns: ReturnType<typeof told>;
}) {
  const lesser = lesserLook(columns);
  const { deltaV, efficiency, propellant_kg } = burn;
  const form = shown(deltaV, speedIn().scale);
  return (
    <tr>
      <th scope="row">{burn.stage}</th>
      <td class={lesser}>
        {numberText(burn.start_s, 0)} to {numberText(burn.end_s, 0)}
      </td>
      {columns.deltaV ? (
        <td class="number">
          {valueText(deltaV, form)}
          <span class="more quiet"> {intervalText(deltaV, form)}</span>
        </td>
      ) : null}
      {columns.efficiency ? (
        <td class="number">{valueText(efficiency, { scale: 100, decimals: 1 })}</td>
      ) : null}
      {columns.propellant ? (
        <td class={lesser}>{valueText(propellant_kg, massForm(propellant_kg))}</td>
      ) : null}
    </tr>
  );
}

/** Columns that hold a figure for at least one burn. */
function told(burns: readonly ReviewBurn[]) {
  return {
    deltaV: burns.some((b) => b.deltaV.value !== null),
    efficiency: burns.some((b) => b.efficiency.value !== null),
    propellant: burns.some((b) => b.propellant_kg.value !== null),
  };
}

/** What each burn gave: the share of its delta-v that was a delta-v less to go is its efficiency. */
export function BurnsTable({ review }: { readonly review: Review }) {
  const columns = told(review.burns);
  if (!columns.deltaV && !columns.propellant) return null;
  const lesser = lesserLook(columns);
  return (
    <section class="burns" aria-label="Burns">
      <h2>Burns</h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">stage</th>
            <th scope="col" class={lesser}>
              time <span class="unit">s</span>
            </th>
            {columns.deltaV ? (
              <th scope="col" class="number">
                delta-v <span class="unit">{speedIn().unit}</span>
              </th>
            ) : null}
            {columns.efficiency ? (
              <th scope="col" class="number">
                efficiency <span class="unit">%</span>
              </th>
            ) : null}
            {columns.propellant ? (
              <th scope="col" class={lesser}>
                propellant <span class="unit">kg</span>
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {review.burns.map((b) => (
            <BurnRow key={`${b.stage} ${b.start_s}`} burn={b} columns={columns} />
          ))}
        </tbody>
      </table>
    </section>
  );
}
