import { signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { Comparison, ComparisonRow, ScoreName } from '../../attempts/types.ts';
import { verdictWords } from '../../exchange/comparisonText.ts';
import { groupRemark, scoreHeads } from '../../exchange/comparisonWords.ts';
import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { Joined } from '../parts/Joined.tsx';
import { shownIn, speedIn } from '../units.ts';

/** Name of the attempt that is set apart in the charts; null = none. */
export const setApart = signal<string | null>(null);

/** A longer table is shown in pages of so many rows. */
const pageRows = 100;

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
          <Joined text={row.name} />
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
  const { groups } = comparison;
  const [first, setFirst] = useState(0);
  const start = first < comparison.rows.length ? first : 0;
  const rows = comparison.rows.slice(start, start + pageRows);
  return (
    <>
      <Pager first={start} count={comparison.rows.length} onTurn={setFirst} />
      <Page rows={rows} groups={groups} scores={scores} />
    </>
  );
}

/** Turns the pages of a long table; nothing for a short one. */
function Pager({
  first,
  count,
  onTurn,
}: {
  readonly first: number;
  readonly count: number;
  readonly onTurn: (first: number) => void;
}) {
  if (count <= pageRows) return null;
  const end = Math.min(first + pageRows, count);
  return (
    <nav class="table-pager" aria-label="Pages of the table">
      <button type="button" class="plain" disabled={first === 0} onClick={() => onTurn(first - pageRows)}>
        Earlier
      </button>
      <span role="status">
        Attempts {numberText(first + 1, 0)} to {numberText(end, 0)} of {numberText(count, 0)}
      </span>
      <button type="button" class="plain" disabled={end === count} onClick={() => onTurn(end)}>
        Later
      </button>
    </nav>
  );
}

function Page({
  rows,
  groups,
  scores,
}: Pick<Comparison, 'rows' | 'groups'> & { readonly scores: readonly ScoreName[] }) {
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
        {groups
          .filter((g) => rows.some((r) => r.group === g.name))
          .map((g) => (
            <tbody key={g.name}>
              <tr class="group-line">
                <th scope="rowgroup" colSpan={3 + scores.length}>
                  {g.name} <span class="quiet">{groupRemark(g, speedIn())}</span>
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
