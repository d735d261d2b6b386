import { readCell } from './columnForms.ts';
import { edit, said, settleEdit, sheet } from './editorState.ts';
import { pastedTable } from './pasted.ts';
import { type Cell, type ColumnName, columns } from './planSheet.ts';
import { withCells } from './rowEdits.ts';
import { startFromPasted } from './starts.ts';

/** A throttle of which no figure goes over this is in fractions of full, as a plan's file reads it. */
const mostFraction = 1.2;

function inPercent(cells: readonly Cell[]): boolean {
  const figures = cells.filter((c) => typeof c === 'number');
  return figures.length < 2 || figures.some((c) => c > mostFraction);
}

/**
 * Lays a pasted table over the sheet, from a cell on.
 * @returns false where the text is one entry, which its field takes itself
 */
function pasteInto(text: string, row: number | null, column: ColumnName): boolean {
  const now = sheet.peek();
  const pasted = pastedTable(text);
  if (now === null || pasted.kind === 'entry') return false;
  settleEdit();
  if (pasted.kind === 'named') {
    void startFromPasted(text);
    return true;
  }
  const left = columns.indexOf(column);
  const read = pasted.cells.map((line) =>
    line.map((cell, k) => readCell(now.axis, columns[left + k] ?? 'event', cell)),
  );
  const k = columns.indexOf('throttle') - left;
  const fractions = k >= 0 && !inPercent(read.map((line) => line[k] ?? null));
  const cells = fractions
    ? read.map((line) => line.map((cell, i) => (i === k && typeof cell === 'number' ? 100 * cell : cell)))
    : read;
  edit(withCells(now, row ?? now.rows[0]?.id ?? -1, column, cells));
  said.value = [
    `${cells.length === 1 ? 'One row was' : `${cells.length} rows were`} pasted.`,
    ...(fractions ? ['Their throttle was in fractions and stands here in percent.'] : []),
  ];
  return true;
}

/** Takes tables that are pasted while the editor is shown, into the cell that has the focus or the first. */
export function followPaste(): () => void {
  const onPaste = (event: ClipboardEvent) => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const target = event.target instanceof HTMLElement ? event.target : null;
    const [, id, column] = /^plan-(\d+)-(at|pitch|throttle|event)$/u.exec(target?.id ?? '') ?? [];
    if (id === undefined && target?.closest('input, textarea, select') != null) return;
    if (event.clipboardData?.files.length || text === '') return;
    const row = id === undefined ? null : Number(id);
    if (!pasteInto(text, row, (column as ColumnName | undefined) ?? 'at')) return;
    // Elsewhere on the page a pasted table is a log.
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  addEventListener('paste', onPaste, true);
  return () => removeEventListener('paste', onPaste, true);
}
