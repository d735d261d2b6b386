import { cellEntry, formOf, readCell } from './columnForms.ts';
import { activeRow, edit, isFaulty, settleEdit, sheet, writing } from './editorState.ts';
import type { ColumnName, PlanRow } from './planSheet.ts';
import { withCell } from './rowEdits.ts';

/** The id of a cell's field in the document. */
export function fieldId(row: number, column: ColumnName): string {
  return `plan-${row}-${column}`;
}

interface Props {
  readonly row: PlanRow;
  /** 1-based. */
  readonly number: number;
  readonly column: ColumnName;
  /** Id of what is said against the row; null where nothing is. */
  readonly fault: string | null;
}

/** One cell of the plan: as it is written while it has the focus, else as the plan has it. */
export function PlanCell({ row, number, column, fault }: Props) {
  const now = sheet.value;
  if (now === null) return null;
  const { axis } = now;
  const mine = writing.value?.id === row.id && writing.value.column === column ? writing.value.entry : null;
  const shown = mine ?? cellEntry(axis, column, row[column]);
  return (
    <input
      id={fieldId(row.id, column)}
      type="text"
      inputMode={column === 'event' ? undefined : 'decimal'}
      class={column === 'event' ? 'words' : undefined}
      list={column === 'event' ? 'plan-events' : undefined}
      autocomplete="off"
      spellcheck={false}
      value={shown}
      aria-label={`${formOf(axis, column).word}, row ${number}`}
      aria-invalid={isFaulty(row.id, column) ? true : undefined}
      aria-describedby={fault ?? undefined}
      onFocus={(event) => {
        activeRow.value = row.id;
        event.currentTarget.select();
      }}
      onInput={(event) => {
        const entry = event.currentTarget.value;
        writing.value = { id: row.id, column, entry };
        edit(
          withCell(sheet.peek() ?? now, row.id, column, readCell(axis, column, entry)),
          `${row.id} ${column}`,
        );
      }}
      onBlur={settleEdit}
    />
  );
}
