import { numberOf } from '../card/entries.ts';

/** What was pasted, understood as far as that goes without the engine. */
export type Pasted =
  /** One entry: the field takes it itself. */
  | { readonly kind: 'entry' }
  /** A table whose first line names its columns: the engine reads it. */
  | { readonly kind: 'named' }
  /** Cells as they stand. */
  | { readonly kind: 'cells'; readonly cells: readonly (readonly string[])[] };

function isFigure(cell: string): boolean {
  return numberOf(cell.replace(/[%°]$/u, '')) !== null;
}

/** What parts the cells: tabs from a spreadsheet, else semicolons, else commas where each line has as many. */
function separatorOf(lines: readonly string[]): string | null {
  for (const separator of ['\t', ';']) if (lines.some((line) => line.includes(separator))) return separator;
  const commas = lines.map((line) => line.split(',').length);
  return lines.length > 1 && commas[0] !== 1 && commas.every((n) => n === commas[0]) ? ',' : null;
}

/** Sorts a pasted text. */
export function pastedTable(text: string): Pasted {
  const lines = text.replace(/\s+$/u, '').split(/\r\n?|\n/u);
  const separator = separatorOf(lines);
  if (separator === null && lines.length === 1) return { kind: 'entry' };
  const cells = lines.map((line) =>
    (separator === null ? [line] : line.split(separator)).map((cell) =>
      cell.trim().replace(/^"(.*)"$/u, '$1'),
    ),
  );
  const [head = []] = cells;
  const named = cells.length > 1 && head.length > 1 && !head.some(isFigure) && head.every((c) => c !== '');
  return named ? { kind: 'named' } : { kind: 'cells', cells };
}
