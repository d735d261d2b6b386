import { type Cell, type ColumnName, columns, type PlanRow, type PlanSheet, row, tidy } from './planSheet.ts';

function withRows(sheet: PlanSheet, rows: readonly PlanRow[]): PlanSheet {
  return { ...sheet, rows };
}

export function withCell(sheet: PlanSheet, id: number, column: ColumnName, cell: Cell): PlanSheet {
  return withRows(
    sheet,
    sheet.rows.map((r) => (r.id === id ? { ...r, [column]: cell } : r)),
  );
}

/** A row put in below another: halfway to the next on the axis, so that it changes nothing yet. */
export function withRowBelow(
  sheet: PlanSheet,
  id: number,
): { readonly sheet: PlanSheet; readonly id: number } {
  const index = sheet.rows.findIndex((r) => r.id === id);
  const place = index < 0 ? sheet.rows.length : index + 1;
  const [before, after] = [sheet.rows[place - 1]?.at, sheet.rows[place]?.at];
  const between = typeof before === 'number' && typeof after === 'number' && after > before;
  const fresh = row(between ? { at: tidy((before + after) / 2) } : {});
  return { sheet: withRows(sheet, sheet.rows.toSpliced(place, 0, fresh)), id: fresh.id };
}

/** Takes a row out; the last one is emptied instead, so that there is always one to write in. */
export function withoutRow(sheet: PlanSheet, id: number): PlanSheet {
  const rows = sheet.rows.filter((r) => r.id !== id);
  return withRows(sheet, rows.length === 0 ? [row()] : rows);
}

/** Moves a row by a step; the same sheet where it stands at that end. */
export function withRowMoved(sheet: PlanSheet, id: number, step: -1 | 1): PlanSheet {
  const index = sheet.rows.findIndex((r) => r.id === id);
  const moved = sheet.rows[index];
  if (moved === undefined || sheet.rows[index + step] === undefined) return sheet;
  return withRows(sheet, sheet.rows.toSpliced(index, 1).toSpliced(index + step, 0, moved));
}

/** Lays cells over the sheet from a cell on, to the right and down; rows that are wanting are added. */
export function withCells(
  sheet: PlanSheet,
  id: number,
  column: ColumnName,
  cells: readonly (readonly Cell[])[],
): PlanSheet {
  const first = Math.max(
    0,
    sheet.rows.findIndex((r) => r.id === id),
  );
  const left = columns.indexOf(column);
  const rows = [...sheet.rows];
  cells.forEach((line, i) => {
    const changes: Partial<Record<ColumnName, Cell>> = {};
    line.forEach((cell, k) => {
      const name = columns[left + k];
      if (name !== undefined) changes[name] = cell;
    });
    rows[first + i] = { ...(rows[first + i] ?? row()), ...changes };
  });
  return withRows(sheet, rows);
}
