import type { RawColumn, RawTable } from '../log/rawTable.ts';

/** A number, words in its place, or nothing. */
export type TableCell = number | string | null;

/**
 * A table whose cells are already apart, as an editor has them: nothing about it is to be found out, so that even
 * one that no file could be (a single row, a column of words) has its faults told row by row.
 * @param rows as many cells each as there are headers
 */
export function cellTable(headers: readonly string[], rows: readonly (readonly TableCell[])[]): RawTable {
  const columns = headers.map((header, k): RawColumn => {
    const cells = rows.map((row) => row[k] ?? null);
    return {
      header,
      unitsCell: null,
      numbers: Float64Array.from(cells, (c) => (typeof c === 'number' ? c : Number.NaN)),
      texts: new Map(cells.flatMap((c, row) => (typeof c === 'string' ? [[row, c] as const] : []))),
    };
  });
  return { form: 'delimited', columns, rows: rows.length, named: true, notes: [] };
}
