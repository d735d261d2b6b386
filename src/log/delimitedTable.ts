import Papa from 'papaparse';
import { LossbookError } from '../errors.ts';
import { blankHeader } from './blankHeader.ts';
import { findHead, isComment, isRule, type TableHead } from './headerRow.ts';
import { withinLimit } from './limits.ts';
import { guessNumberStyle } from './numbers.ts';
import { ColumnBuilder, type RawTable } from './rawTable.ts';
import { reshapedText } from './reshapedText.ts';
import { guessSeparator, type Separator } from './separator.ts';
import type { QualityNote } from './types.ts';

const HEAD_CHARACTERS = 2_000_000;
const HEAD_LINES = 400;
const SAMPLE_LINES = 200;
/** Characters handed to the tokeniser at a time, which bounds its memory. */
const PIECE_CHARACTERS = 4 << 20;

/**
 * Reads delimited text into a table: separator, number style, preamble, header and units row are found from
 * the content.
 * @throws LossbookError `log-no-table` where nothing makes a table, `log-too-large` over the limits.
 */
export function delimitedTable(content: string, name: string): RawTable {
  const lines = content.includes('\r') ? content.replace(/\r\n?/gu, '\n') : content;
  const text = reshapedText(lines) ?? lines;
  const found = guessSeparator(sampleLines(text));
  if (found === null) throw new LossbookError('log-no-table', {}, { file: name });
  withinLimit('columns', found.width, name);
  const { separator, width } = found;
  const plainQuotes = quotesAreText(text);
  const headRows: string[][] = [];
  eachRow(text.slice(0, HEAD_CHARACTERS), separator, plainQuotes, (cells) => {
    headRows.push(cells);
    return headRows.length < HEAD_LINES;
  });
  const head = separator === 'blanks' ? blankHeader(text, headRows, width) : findHead(headRows, width);
  if (head === null) throw new LossbookError('log-no-table', {}, { file: name });
  const named = shiftedHead(head, headRows, width);
  return collect(text, name, separator, plainQuotes, named, Math.max(width, named.headers?.length ?? 0));
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

function collect(
  text: string,
  name: string,
  separator: Separator,
  plainQuotes: boolean,
  head: TableHead,
  width: number,
): RawTable {
  const sample: string[] = [];
  for (const line of sampleLines(text)) {
    eachRow(line, separator, plainQuotes, (cells) => {
      sample.push(...cells);
      return true;
    });
  }
  const numberStyle = guessNumberStyle(sample);
  const builders = Array.from({ length: width }, () => new ColumnBuilder(numberStyle));
  const tally = {
    repeatedHeader: 0,
    comments: 0,
    short: 0,
    long: 0,
    longFirst: 0,
    shortFirst: 0,
    shortLast: 0,
    stray: 0,
  };
  const headerKey = head.headers === null ? null : rowKey(head.headers);
  let line = 0;
  let row = 0;
  let lastCells = width;
  eachRow(text, separator, plainQuotes, (cells) => {
    if (line++ < head.firstData) return true;
    const first = cells[0] ?? '';
    if (cells.length === 1 && first.trim() === '') return true;
    if (isComment(first)) {
      tally.comments++;
      return true;
    }
    if (isRule(cells)) return true;
    if (headerKey !== null && rowKey(cells) === headerKey) {
      tally.repeatedHeader++;
      return true;
    }
    // A foot line, or a line of prose between rows.
    if (cells.length < 2 && width > 1) {
      tally.stray++;
      return true;
    }
    lastCells = cells.length;
    if (cells.length < width) {
      tally.short++;
      tally.shortLast = row + 1;
      if (tally.short === 1) tally.shortFirst = row + 1;
    } else if (cells.length > width && cells.slice(width).some((cell) => cell.trim() !== '')) {
      if (tally.long++ === 0) tally.longFirst = row + 1;
    }
    for (let i = 0; i < width && i < cells.length; i++) builders[i]?.putText(row, cells[i] ?? '');
    row++;
    if ((row & 0xffff) === 0) withinLimit('rows', row, name);
    return true;
  });
  withinLimit('rows', row, name);
  const cutLast = lastCells < width && !text.endsWith('\n') && tally.shortLast === row;
  const notes = tableNotes({ ...tally, short: tally.short - (cutLast ? 1 : 0) }, width);
  if (cutLast) {
    notes.push({
      code: 'cut-last-row',
      channel: null,
      rows: [row, row],
      count: 1,
      text: 'The file breaks off inside its last row, which is left out; the flight may have gone on.',
    });
    row--;
  }
  const columns = builders.map((builder, i) =>
    builder.finish(
      (head.headers?.[i] ?? '').trim() || `column ${i + 1}`,
      head.units?.[i]?.trim() || null,
      row,
    ),
  );
  const filled = columns.filter(
    (column, i) =>
      (head.headers?.[i] ?? '').trim() !== '' ||
      column.texts.size > 0 ||
      column.numbers.some((x) => !Number.isNaN(x)),
  );
  return { form: 'delimited', columns: filled, rows: row, named: head.headers !== null, notes };
}

function rowKey(cells: readonly string[]): string {
  return cells
    .map((cell) => cell.trim().replace(/^#\s*/u, ''))
    .filter((cell) => cell !== '')
    .join('\u001f');
}

/** Lines from the beginning, the middle and the end, without blank ones. */
function sampleLines(text: string): string[] {
  const lines: string[] = [];
  const take = (from: number, most: number): void => {
    let at = from;
    for (let k = 0; k < most && at < text.length; ) {
      const end = text.indexOf('\n', at);
      const line = text.slice(at, end < 0 ? text.length : end);
      // Blank lines do not count, but a million of them must not take long either.
      k += line.trim() === '' ? 0.02 : 1;
      if (line.trim() !== '' && line.length < HEAD_CHARACTERS && !isComment(line)) lines.push(line);
      if (end < 0) return;
      at = end + 1;
    }
  };
  take(0, SAMPLE_LINES);
  for (const share of [0.25, 0.5, 0.75, 0.95]) {
    const start = text.indexOf('\n', Math.floor(text.length * share));
    if (start >= 0) take(start + 1, SAMPLE_LINES / 4);
  }
  return lines;
}

/** True where quotes cannot be pairs around cells (an inch mark, a quote that is never closed). */
function quotesAreText(text: string): boolean {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count++;
  return count % 2 === 1;
}

/** Hands over the cells of every line until `take` returns false. */
function eachRow(
  text: string,
  separator: Separator,
  plainQuotes: boolean,
  take: (cells: string[]) => boolean,
): void {
  if (separator === 'blanks') {
    for (let at = 0; at < text.length; ) {
      const found = text.indexOf('\n', at);
      const end = found < 0 ? text.length : found;
      if (
        !take(
          text
            .slice(at, end)
            .trim()
            .split(/[ \t]+/u),
        )
      )
        return;
      at = end + 1;
    }
    return;
  }
  Papa.parse<string[]>(text, {
    delimiter: separator,
    newline: '\n',
    chunkSize: PIECE_CHARACTERS,
    // The tokeniser's fast mode takes quotes as letters.
    ...(plainQuotes ? { fastMode: true } : {}),
    step: ({ data }, parser) => {
      if (!take(data)) parser.abort();
    },
  } as Papa.ParseConfig<string[]>);
}

interface RowTally {
  readonly repeatedHeader: number;
  readonly comments: number;
  readonly short: number;
  readonly shortFirst: number;
  readonly shortLast: number;
  readonly long: number;
  readonly longFirst: number;
  readonly stray: number;
}

function tableNotes(tally: RowTally, width: number): QualityNote[] {
  const notes: QualityNote[] = [];
  const add = (code: string, count: number, rows: readonly [number, number] | null, text: string): void => {
    if (count > 0) notes.push({ code, channel: null, rows, count, text });
  };
  add(
    'repeated-header',
    tally.repeatedHeader,
    null,
    `The header comes again ${tally.repeatedHeader} time(s) between the rows; those lines are passed over.`,
  );
  add(
    'short-rows',
    tally.short,
    [tally.shortFirst, tally.shortLast],
    `${tally.short} row(s) have fewer than ${width} cells; what they lack counts as missing.`,
  );
  add(
    'long-rows',
    tally.long,
    [tally.longFirst, tally.longFirst],
    `${tally.long} row(s) have more than ${width} cells; the surplus is not read.`,
  );
  add(
    'stray-lines',
    tally.stray,
    null,
    `${tally.stray} line(s) between or below the rows are no rows and are passed over.`,
  );
  return notes;
}
