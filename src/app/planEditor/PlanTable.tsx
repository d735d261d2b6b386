import { useLayoutEffect } from 'preact/hooks';
import { planEventNames } from '../../plan/planEvents.ts';
import { current } from '../state.ts';
import { formOf } from './columnForms.ts';
import { activeRow, rowFaults, sheet } from './editorState.ts';
import { PlanCell } from './PlanCell.tsx';
import { type ColumnName, columns, type PlanRow } from './planSheet.ts';
import { RowTools } from './RowTools.tsx';
import { addRow, deleteRow, followFocus, goBy, insertBelow, moveRow } from './rowActions.ts';

/** Events that steer the flight, each for every stage that the flight had, then the others. */
function eventChoices(): readonly string[] {
  const stages = [...new Set((current.value?.analysis.review.burns ?? []).map((b) => b.stage))];
  const steering = ['cutoff', 'separation', 'ignition'];
  return [...steering.flatMap((name) => stages.map((stage) => `${name} (${stage})`)), ...planEventNames];
}

/** Keys of a cell: along the rows, and what can be done with a row. */
function onKey(event: KeyboardEvent, row: PlanRow, column: ColumnName): void {
  const act = (work: () => void) => {
    event.preventDefault();
    work();
  };
  const { key, altKey } = event;
  if (event.ctrlKey || event.metaKey || event.isComposing) return;
  if (altKey) {
    if (key === 'ArrowUp') act(() => moveRow(row.id, -1, column));
    if (key === 'ArrowDown') act(() => moveRow(row.id, 1, column));
    if (key === 'Enter') act(() => insertBelow(row.id));
    if (key === 'Delete' || key === 'Backspace') act(() => deleteRow(row.id, column));
    return;
  }
  if (key === 'Enter')
    act(() => {
      if (event.shiftKey) goBy(row.id, -1, column);
      else if (!goBy(row.id, 1, column)) addRow(column);
    });
  // In the events the arrows go through the names that are offered.
  if (column === 'event') return;
  if (key === 'ArrowUp') act(() => goBy(row.id, -1, column));
  if (key === 'ArrowDown') act(() => goBy(row.id, 1, column));
}

function Row({ row, number }: { readonly row: PlanRow; readonly number: number }) {
  const faults = rowFaults.value.get(row.id);
  const faultId = faults === undefined ? null : `plan-${row.id}-fault`;
  const active = activeRow.value === row.id;
  return (
    <>
      <tr class={[active ? 'active' : '', faultId === null ? '' : 'wrong'].join(' ').trim()}>
        <th scope="row">
          <span class="unseen">row </span>
          {number}
        </th>
        {columns.map((column) => (
          <td key={column} onKeyDown={(event) => onKey(event, row, column)}>
            <PlanCell row={row} number={number} column={column} fault={faultId} />
          </td>
        ))}
      </tr>
      {active ? (
        <tr class="row-tools-line">
          <td />
          <td colSpan={columns.length}>
            <RowTools />
          </td>
        </tr>
      ) : null}
      {faults === undefined ? null : (
        <tr class="row-fault">
          <td />
          <td colSpan={columns.length}>
            <p id={faultId ?? undefined} class="entry-note fault">
              {faults.texts.join(' ')}
            </p>
          </td>
        </tr>
      )}
    </>
  );
}

/** The rows of the plan. */
export function PlanTable() {
  const now = sheet.value;
  useLayoutEffect(followFocus);
  if (now === null) return null;
  return (
    <>
      <table class="plan-rows" aria-label="Rows of the plan">
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">row</span>
            </th>
            {columns.map((column) => {
              const { word, unit } = formOf(now.axis, column);
              return (
                <th key={column} scope="col" class={column === 'event' ? 'words' : undefined}>
                  {word} {unit === '' ? null : <span class="unit">{unit}</span>}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {now.rows.map((row, i) => (
            <Row key={row.id} row={row} number={i + 1} />
          ))}
        </tbody>
      </table>
      <datalist id="plan-events">
        {eventChoices().map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <button type="button" class="plain strong add-row" onClick={() => addRow()}>
        Add a row
      </button>
    </>
  );
}
