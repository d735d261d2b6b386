import { blankHeader } from './blankHeader.ts';
import { eachRow } from './eachRow.ts';
import { findHead, type TableHead } from './headerRow.ts';
import { guessNumberStyle } from './numbers.ts';
import type { TableLayout } from './rowCollector.ts';
import { HEAD_CHARACTERS, sampleLines, type TextLike } from './sampleLines.ts';
import { guessSeparator } from './separator.ts';

/** Lines in which the head must end. */
const HEAD_LINES = 400;

/**
 * Separator, number style, preamble, header and units row of a delimited text, found from its content; null where
 * nothing makes a table.
 * @param plainQuotes whether quotes are letters and not pairs around cells
 */
export function tableLayout(text: TextLike, plainQuotes: boolean): TableLayout | null {
  const lines = sampleLines(text);
  const found = guessSeparator(lines);
  if (found === null) return null;
  const { separator, width } = found;
  const begin = text.slice(0, HEAD_CHARACTERS);
  const headRows: string[][] = [];
  eachRow(begin, separator, plainQuotes, (cells) => {
    headRows.push(cells);
    return headRows.length < HEAD_LINES;
  });
  const head = separator === 'blanks' ? blankHeader(begin, headRows, width) : findHead(headRows, width);
  if (head === null) return null;
  const sample: string[] = [];
  for (const line of lines) {
    eachRow(line, separator, plainQuotes, (cells) => {
      sample.push(...cells);
      return true;
    });
  }
  const named = shiftedHead(head, headRows, width);
  return {
    separator,
    width: Math.max(width, named.headers?.length ?? 0),
    head: named,
    numberStyle: guessNumberStyle(sample),
  };
}

/** Some programs leave out the name of a first column that only numbers the rows. */
function shiftedHead(head: TableHead, rows: readonly (readonly string[])[], width: number): TableHead {
  if (head.headers === null || head.headers.length !== width - 1) return head;
  const data = rows.slice(head.firstData, head.firstData + 20).filter((cells) => cells.length === width);
  const numbers = data.map((cells) => Number((cells[0] ?? '').replace(/^"|"$/gu, '')));
  const counts =
    data.length >= 2 && numbers.every((x, i) => Number.isInteger(x) && x === (numbers[0] ?? 0) + i);
  const full = data.every((cells) => (cells[width - 1] ?? '').trim() !== '');
  if (!counts || !full) return head;
  return { ...head, headers: ['', ...head.headers], units: head.units === null ? null : ['', ...head.units] };
}
