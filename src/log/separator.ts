import { findUnitAnywhere } from '../units/units.ts';
import { isMissingMark } from './numbers.ts';

/** What parts the columns of a text; `blanks` are any number of blanks or tabs. */
export type Separator = ',' | ';' | '\t' | '|' | 'blanks';

/** In the order in which they win when two explain a text equally well. */
const separators: readonly Separator[] = ['\t', ';', '|', ',', 'blanks'];

const numberLike = /^[+-]?(?:\d{1,3}(?:[ '_]\d{3})+|\d[\d.,]*|[.,]\d+)(?:[.,]\d*)?(?:[ed][+-]?\d+)?%?$/iu;
const clockLike =
  /^(?:[lt]?\s*[+-]?)?\s*(?:\d{4}-\d\d-\d\d[t ])?\d+:\d\d(?::\d\d)?(?:[.,]\d+)?\s*(?:z|[ap]m|[+-]\d\d:?\d\d)?$/iu;

/** True for a cell as data rows have them: a number, a clock reading, a sign for a missing value. */
export function isDataCell(cell: string): boolean {
  const text = cell
    .trim()
    .replace(/^\[(.*)\]$/u, '$1')
    .replace(/[−–]/gu, '-');
  if (text.length === 0 || text.length > 40) return false;
  const unit = /^[+-]?[\d.,]*\d\s*([^\d\s.,][^\d]{0,9}\d?)$/u.exec(text)?.[1];
  if (unit !== undefined && findUnitAnywhere(unit).length > 0) return true;
  return (
    numberLike.test(text) || clockLike.test(text) || /^\d{4}-\d\d-\d\d$/u.test(text) || isMissingMark(text)
  );
}

/** The cells of one line, quotes honoured. */
export function splitLine(line: string, separator: Separator): string[] {
  if (separator === 'blanks') return line.trim().split(/\s+/u);
  if (!line.includes('"')) return line.split(separator);
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (const letter of line) {
    if (letter === '"') quoted = !quoted;
    else if (letter === separator && !quoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  cells.push(cell);
  return cells;
}

/** The share of data cells in a row, squared: rows with a text column count, rows torn in the wrong place hardly. */
function dataShare(cells: readonly string[]): number {
  const filled = cells.filter((cell) => cell.trim() !== '');
  if (filled.length < 2) return 0;
  return (filled.filter(isDataCell).length / filled.length) ** 2;
}

/**
 * The separator under which most lines become rows of data of one width; null where none makes a table of two
 * columns or more.
 */
export function guessSeparator(lines: readonly string[]): { separator: Separator; width: number } | null {
  let best: { separator: Separator; width: number; score: number } | null = null;
  for (const separator of separators) {
    const byWidth = new Map<number, number>();
    for (const line of lines) {
      const cells = splitLine(line, separator);
      const share = dataShare(cells);
      if (share > 0.2) byWidth.set(cells.length, (byWidth.get(cells.length) ?? 0) + share);
    }
    for (const [width, score] of byWidth) {
      // Text without a clear separator has blanks too: they must explain clearly more.
      if (best === null || score > best.score * (separator === 'blanks' ? 1.3 : 1.05)) {
        best = { separator, width, score };
      }
    }
  }
  return best;
}
