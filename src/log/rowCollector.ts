import { counted } from '../units/figures.ts';
import { isComment, isRule, type TableHead } from './headerRow.ts';
import { withinLimit } from './limits.ts';
import type { NumberStyle } from './numbers.ts';
import { ColumnBuilder, type RawTable } from './rawTable.ts';
import type { Separator } from './separator.ts';
import type { QualityNote } from './types.ts';

/** Rows taken between two looks at their limit. */
const ROWS_BETWEEN_LOOKS = 1 << 16;

const CELL_END = '\u001f';

/** How a delimited text is laid out. */
export interface TableLayout {
  readonly separator: Separator;
  readonly width: number;
  readonly head: TableHead;
  readonly numberStyle: NumberStyle;
}

/** Takes the rows of a delimited text one by one and makes columns of them. */
export class RowCollector {
  /** Rows of data so far. */
  rows = 0;
  readonly builders: readonly ColumnBuilder[];
  private readonly layout: TableLayout;
  private readonly name: string;
  private readonly headerKey: string | null;
  private readonly firstName: string;
  private lastCells: number;
  private nextLook = ROWS_BETWEEN_LOOKS;
  private readonly tally = {
    repeatedHeader: 0,
    comments: 0,
    short: 0,
    long: 0,
    longFirst: 0,
    shortFirst: 0,
    shortLast: 0,
    stray: 0,
  };

  /** @param expectedRows about how many rows will come, where that is known */
  constructor(layout: TableLayout, name: string, expectedRows = 0) {
    this.layout = layout;
    this.name = name;
    const { head, width, numberStyle } = layout;
    this.headerKey = head.headers === null ? null : rowKey(head.headers);
    this.firstName = this.headerKey?.split(CELL_END)[0] ?? '';
    this.lastCells = width;
    this.builders = Array.from({ length: width }, () => new ColumnBuilder(numberStyle, expectedRows));
  }

  /** Takes a line behind the head. */
  take(cells: readonly string[]): void {
    const { width } = this.layout;
    const { tally } = this;
    const first = cells[0] ?? '';
    if (cells.length === 1 && first.trim() === '') return;
    if (isComment(first)) {
      tally.comments++;
      return;
    }
    if (isRule(cells)) return;
    if (this.repeatsHeader(cells)) {
      tally.repeatedHeader++;
      return;
    }
    // A foot line, or a line of prose between rows.
    if (cells.length < 2 && width > 1) {
      tally.stray++;
      return;
    }
    if (cells.length < width) {
      tally.short++;
      tally.shortLast = this.rows + 1;
      if (tally.short === 1) tally.shortFirst = this.rows + 1;
    } else if (cells.length > width && cells.slice(width).some((cell) => cell.trim() !== '')) {
      if (tally.long++ === 0) tally.longFirst = this.rows + 1;
    }
    for (let i = 0; i < width && i < cells.length; i++) this.builders[i]?.putText(this.rows, cells[i] ?? '');
    this.rowsDone(1, cells.length);
  }

  private repeatsHeader(cells: readonly string[]): boolean {
    if (this.headerKey === null) return false;
    // Asked at every row: most are known by their first word.
    const first = cells.find((cell) => cell.trim() !== '');
    return first !== undefined && rowKey([first]) === this.firstName && rowKey(cells) === this.headerKey;
  }

  /** Ends rows of so many cells, which were put into the builders. */
  rowsDone(count: number, cells: number): void {
    this.lastCells = cells;
    this.rows += count;
    if (this.rows > this.nextLook) {
      withinLimit('rows', this.rows, this.name);
      this.nextLook = this.rows + ROWS_BETWEEN_LOOKS;
    }
  }

  /** @param endsWithLine whether the text's last line has its end */
  finish(endsWithLine: boolean): RawTable {
    const { head, width } = this.layout;
    const { tally } = this;
    let rows = this.rows;
    withinLimit('rows', rows, this.name);
    const cutLast = this.lastCells < width && !endsWithLine && tally.shortLast === rows;
    const notes = tableNotes({ ...tally, short: tally.short - (cutLast ? 1 : 0) }, width);
    if (cutLast) {
      notes.push({
        code: 'cut-last-row',
        channel: null,
        rows: [rows, rows],
        count: 1,
        text: 'The file breaks off inside its last row, which is left out; the flight may have gone on.',
      });
      rows--;
    }
    const columns = this.builders.map((builder, i) =>
      builder.finish(
        (head.headers?.[i] ?? '').trim() || `column ${i + 1}`,
        head.units?.[i]?.trim() || null,
        rows,
      ),
    );
    const filled = columns.filter(
      (column, i) =>
        (head.headers?.[i] ?? '').trim() !== '' ||
        column.texts.size > 0 ||
        column.numbers.some((x) => !Number.isNaN(x)),
    );
    return { form: 'delimited', columns: filled, rows, named: head.headers !== null, notes };
  }
}

/** A row's words, for telling rows apart. */
function rowKey(cells: readonly string[]): string {
  return cells
    .map((cell) => cell.trim().replace(/^#\s*/u, ''))
    .filter((cell) => cell !== '')
    .join(CELL_END);
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
    `Passed over: the header, ${counted(tally.repeatedHeader, 'time', 'times')} more between the rows.`,
  );
  add(
    'short-rows',
    tally.short,
    [tally.shortFirst, tally.shortLast],
    `${counted(tally.short, 'row', 'rows')} with fewer than ${width} cells: what is lacking counts as missing.`,
  );
  add(
    'long-rows',
    tally.long,
    [tally.longFirst, tally.longFirst],
    `${counted(tally.long, 'row', 'rows')} with more than ${width} cells: the surplus is not read.`,
  );
  add(
    'stray-lines',
    tally.stray,
    null,
    `Passed over as no rows: ${counted(tally.stray, 'line', 'lines')} between or below the rows.`,
  );
  return notes;
}
