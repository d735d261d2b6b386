import { activeRow, edit, said, settleEdit, sheet } from './editorState.ts';
import { fieldId } from './PlanCell.tsx';
import type { ColumnName } from './planSheet.ts';
import { withoutRow, withRowBelow, withRowMoved } from './rowEdits.ts';

/** The field that has the focus once the table is drawn anew. */
let wanted: string | null = null;

function focusCell(row: number | undefined, column: ColumnName): void {
  if (row === undefined) return;
  activeRow.value = row;
  wanted = fieldId(row, column);
  // Where nothing is drawn anew, the field is there already.
  queueMicrotask(followFocus);
}

/** Called after the table is drawn. */
export function followFocus(): void {
  const field = wanted === null ? null : document.getElementById(wanted);
  if (field === null) return;
  wanted = null;
  field.focus();
}

/** 0-based; −1 where the row is not there. */
function placeOf(id: number): number {
  return sheet.peek()?.rows.findIndex((r) => r.id === id) ?? -1;
}

export function insertBelow(id: number, column: ColumnName = 'at'): void {
  const now = sheet.peek();
  if (now === null) return;
  settleEdit();
  const put = withRowBelow(now, id);
  edit(put.sheet);
  said.value = [`Row ${placeOf(put.id) + 1} is new.`];
  focusCell(put.id, column);
}

export function addRow(column: ColumnName = 'at'): void {
  insertBelow(sheet.peek()?.rows.at(-1)?.id ?? -1, column);
}

export function deleteRow(id: number, column: ColumnName = 'at'): void {
  const now = sheet.peek();
  if (now === null) return;
  settleEdit();
  const place = placeOf(id);
  edit(withoutRow(now, id));
  said.value = [`Row ${place + 1} is deleted.`];
  const rows = sheet.peek()?.rows ?? [];
  focusCell(rows[Math.min(place, rows.length - 1)]?.id, column);
}

/** @param column keeps the focus; null where a button has it */
export function moveRow(id: number, step: -1 | 1, column: ColumnName | null): void {
  const now = sheet.peek();
  if (now === null) return;
  settleEdit();
  const place = placeOf(id);
  edit(withRowMoved(now, id, step));
  const next = placeOf(id);
  said.value = [
    next === place ? `Row ${place + 1} stands at that end.` : `Row ${place + 1} is now row ${next + 1}.`,
  ];
  if (column !== null) focusCell(id, column);
}

/** Goes to the same column of a row above or below. @returns false where there is none */
export function goBy(id: number, step: -1 | 1, column: ColumnName): boolean {
  const next = sheet.peek()?.rows[placeOf(id) + step];
  focusCell(next?.id, column);
  return next !== undefined;
}
