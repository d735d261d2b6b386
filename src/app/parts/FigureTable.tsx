import { intervalText, shown, valueText } from '../../exchange/figureText.ts';
import { sentence, unbroken } from '../../exchange/sentence.ts';
import type { Figure } from '../../review/types.ts';
import { inUnits, shownIn } from '../units.ts';
import { Term } from './Term.tsx';

/** One figure of a table. */
export interface FigureLine {
  readonly label: string;
  readonly figure: Figure;
  readonly unit: string;
  /** Shown value = stored value × scale. */
  readonly scale?: number;
  /** Where the figure's own uncertainty should not decide. */
  readonly decimals?: number;
  /** Said after the label: when, where, what else is known of it. */
  readonly note?: string;
  /** True where the reason of a figure that is not there stands in its place. */
  readonly reasoned?: boolean;
}

/** Value, unit, interval, basis. The reasons of figures that are not there stand together further down the page. */
function FigureRow({ label, figure, decimals, note, reasoned, ...given }: FigureLine) {
  const { unit, scale } = shownIn(given.unit, given.scale ?? 1);
  const form = decimals === undefined ? shown(figure, scale) : { scale, decimals };
  return (
    <tr>
      <th scope="row">
        <Term label={label} />
        {note === undefined || note === '' ? null : <span class="quiet"> {unbroken(inUnits(note))}</span>}
      </th>
      {figure.value === null ? (
        <td class={reasoned && figure.reason !== undefined ? 'absent reason' : 'absent'} colSpan={4}>
          {reasoned && figure.reason !== undefined ? sentence(figure.reason) : 'not available'}
        </td>
      ) : (
        <>
          <td class="number">{valueText(figure, form)}</td>
          <td class="unit">{unit}</td>
          <td class="number more quiet">{intervalText(figure, form)}</td>
          <td class="more basis quiet">{figure.basis}</td>
        </>
      )}
    </tr>
  );
}

/** Figures with their honesty, one a row. */
export function FigureTable({ lines }: { readonly lines: readonly FigureLine[] }) {
  return (
    <table class="figures">
      <thead class="unseen-head">
        <tr>
          <th scope="col">figure</th>
          <th scope="col">value</th>
          <th scope="col">unit</th>
          <th scope="col" class="more">
            95 % interval
          </th>
          <th scope="col" class="more">
            basis
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <FigureRow key={line.label} {...line} />
        ))}
      </tbody>
    </table>
  );
}
