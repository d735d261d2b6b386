import { length } from './wrapText.ts';

/** `point` lines numbers up at their decimal points. */
export type Alignment = 'left' | 'right' | 'point';

export interface TextColumn {
  readonly align: Alignment;
  /** Ink of the column's cells below the head, laid on after the padding. */
  readonly ink?: (text: string) => string;
}

/**
 * Rows of cells as lines of text, each column as wide as its widest cell, two spaces between columns. The first
 * row is the head when `head` gives an ink for it.
 */
export function textTable(
  columns: readonly TextColumn[],
  rows: readonly (readonly string[])[],
  head?: (text: string) => string,
): string[] {
  const padded = columns.map((column, c) =>
    column.align === 'left'
      ? padColumn(rows, c, (cell, room) => (c === columns.length - 1 ? cell : cell + ' '.repeat(room)))
      : padColumn(
          column.align === 'point' ? tailed(rows, c, head !== undefined) : rows,
          c,
          (cell, room) => ' '.repeat(room) + cell,
        ),
  );
  return rows.map((_, r) => {
    const cells = padded.map((cells) => cells[r] ?? '');
    if (head !== undefined && r === 0) return head(cells.join('  ').trimEnd());
    return cells
      .map((cell, c) => columns[c]?.ink?.(cell) ?? cell)
      .join('  ')
      .trimEnd();
  });
}

function padColumn(
  rows: readonly (readonly string[])[],
  c: number,
  pad: (cell: string, room: number) => string,
): string[] {
  const cells = rows.map((row) => row[c] ?? '');
  const width = Math.max(0, ...cells.map(length));
  return cells.map((cell) => pad(cell, width - length(cell)));
}

/** The rows with blanks after column `c`'s numbers so that their decimal points fall under each other. */
function tailed(rows: readonly (readonly string[])[], c: number, headed: boolean): string[][] {
  const tail = (cell: string) => {
    const point = cell.lastIndexOf('.');
    return point < 0 ? 0 : cell.length - point;
  };
  const body = rows.slice(headed ? 1 : 0);
  const longest = Math.max(0, ...body.map((row) => tail(row[c] ?? '')));
  return rows.map((row, r) => {
    const copy = [...row];
    if (!headed || r > 0) copy[c] = (row[c] ?? '') + ' '.repeat(longest - tail(row[c] ?? ''));
    return copy;
  });
}
