import { signal } from '@preact/signals';
import type { Comparison, ComparisonGroup, ComparisonRow, ScoreName } from '../../attempts/types.ts';
import { verdictWords } from '../../exchange/comparisonText.ts';
import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { shownIn, speedIn } from '../units.ts';
import { scoreHeads } from './choice.ts';

/** Name of the attempt that is set apart in the charts; null = none. */
export const setApart = signal<string | null>(null);

function remarkOf({ attempts, reached, margin }: ComparisonGroup): string {
  const { scale, unit } = speedIn();
  const at = (v: number | null) => numberText(v === null ? null : v * scale, 0);
  const range =
    margin.median === null
      ? 'no margin known'
      : `margin ${at(margin.least)} to ${at(margin.most)} ${unit}, median ${at(margin.median)}`;
  return `${reached} of ${attempts} on target, ${range}`;
}

function Row({ row, scores }: { readonly row: ComparisonRow; readonly scores: readonly ScoreName[] }) {
  const apart = setApart.value === row.name;
  return (
    <tr class={apart ? 'chosen' : ''}>
      <td class="number quiet">{row.attempt ?? row.order}</td>
      <th scope="row">
        <button
          type="button"
          class="finding-title"
          aria-pressed={apart}
          onClick={() => {
            setApart.value = apart ? null : row.name;
          }}
        >
          {row.name}
          <span class="unseen"> (set apart in the charts)</span>
        </button>
      </th>
      <td>{verdictWords[row.verdict.code]}</td>
      {scores.map((s) => {
        const figure = row.scores[s];
        const form = shown(figure, shownIn(scoreHeads[s].unit, 1).scale);
        return (
          <td key={s} class="number">
            {valueText(figure, form)}
            <span class="interval quiet"> {intervalText(figure, form)}</span>
          </td>
        );
      })}
    </tr>
  );
}

/** The attempts by groups, with the score columns that were chosen. */
export function AttemptsTable({
  comparison,
  scores,
}: {
  readonly comparison: Comparison;
  readonly scores: readonly ScoreName[];
}) {
  const { rows, groups } = comparison;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section class="wide" aria-label="Table of attempts" tabIndex={0}>
      <table class="figures attempts-table">
        <thead>
          <tr>
            <th scope="col" class="number">
              <span class="unseen">attempt</span>
              <span aria-hidden="true">no.</span>
            </th>
            <th scope="col">flight</th>
            <th scope="col">verdict</th>
            {scores.map((s) => (
              <th key={s} scope="col" class="number">
                {scoreHeads[s].head} <span class="unit">{shownIn(scoreHeads[s].unit, 1).unit}</span>
              </th>
            ))}
          </tr>
        </thead>
        {groups.map((g) => (
          <tbody key={g.name}>
            <tr class="group-line">
              <th scope="rowgroup" colSpan={3 + scores.length}>
                {g.name} <span class="quiet">{remarkOf(g)}</span>
              </th>
            </tr>
            {rows
              .filter((r) => r.group === g.name)
              .map((row) => (
                <Row key={row.name} row={row} scores={scores} />
              ))}
          </tbody>
        ))}
      </table>
    </section>
  );
}
