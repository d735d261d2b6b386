import { findUnitAnywhere } from '../units/units.ts';
import { type NumberStyle, readNumber } from './numbers.ts';
import type { Log, QualityNote } from './types.ts';

/** A column as it stands in the file: numbers where cells are plain numbers, texts where they are not. */
export interface RawColumn {
  /** Header as written; `column N` where the file has none. */
  readonly header: string;
  /** Unit written elsewhere than in the header (a row of units, a list of units in JSON). */
  readonly unitsCell: string | null;
  /** One per row; NaN where the cell is empty or no number. */
  readonly numbers: Float64Array;
  /** Cells that hold something else than a number, by 0-based row. */
  readonly texts: ReadonlyMap<number, string>;
}

/** The table that a file holds, before anything is known about its meaning. */
export interface RawTable {
  readonly form: Log['source']['form'];
  readonly columns: readonly RawColumn[];
  readonly rows: number;
  /** False where no header names the columns. */
  readonly named: boolean;
  readonly notes: readonly QualityNote[];
}

/** Longest text of a cell that is kept; no label of an event is longer. */
const LONGEST_CELL = 500;

const numberWithUnit = /^([+\-−]?[\d.,]*\d(?:e[+-]?\d+)?)\s*([^\d\s.,+-][^\d]{0,9}\d?)$/iu;

/** The unit that is written behind the number in most cells of a column (`12.5 km`); null where none is. */
function unitInCells(texts: ReadonlyMap<number, string>, rows: number): string | null {
  if (texts.size < 0.5 * rows || texts.size === 0) return null;
  const counts = new Map<string, number>();
  for (const text of texts.values()) {
    const unit = numberWithUnit.exec(text)?.[2];
    if (unit !== undefined) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  }
  const [unit, count] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? ['', 0];
  return count > 0.8 * texts.size && findUnitAnywhere(unit).length > 0 ? unit : null;
}

/** Less than this share of a column's room is cut to size; memory that was never touched costs nothing. */
const LEAST_USED = 0.75;

/** Collects one column row by row. */
export class ColumnBuilder {
  private numbers: Float64Array;
  private readonly texts = new Map<number, string>();
  private length = 0;
  private readonly style: NumberStyle;

  /** @param expectedRows about how many rows will come, where that is known */
  constructor(style: NumberStyle, expectedRows = 0) {
    this.style = style;
    this.numbers = new Float64Array(Math.max(1024, expectedRows));
  }

  /** Puts a cell's text into a row; rows must come in order, rows left out are empty. */
  putText(row: number, cell: string): void {
    const value = readNumber(cell, this.style);
    this.putNumber(row, value);
    if (!Number.isNaN(value)) return;
    const text = cell.trim();
    if (text !== '') this.texts.set(row, text.slice(0, LONGEST_CELL));
  }

  putNumber(row: number, value: number): void {
    if (row === this.length && row < this.numbers.length) {
      this.numbers[row] = value;
      this.length = row + 1;
      return;
    }
    if (row >= this.numbers.length) {
      const larger = new Float64Array(Math.max(row + 1, this.numbers.length * 2));
      larger.set(this.numbers.subarray(0, this.length));
      this.numbers = larger;
    }
    if (row > this.length) this.numbers.fill(Number.NaN, this.length, row);
    this.numbers[row] = value;
    this.length = row + 1;
  }

  /** Puts a stretch of a column's numbers, from row `row` on. */
  putNumbers(row: number, from: Float64Array, begin: number, end: number): void {
    if (end <= begin) return;
    // The last one makes the room, and fills up rows that were left out.
    this.putNumber(row + end - begin - 1, from[end - 1]!);
    this.numbers.set(from.subarray(begin, end), row);
  }

  /** As many numbers as there are rows; copied only where much room would stay unused. */
  private cutTo(rows: number): Float64Array {
    if (rows <= this.length && rows > LEAST_USED * this.numbers.length) return this.numbers.subarray(0, rows);
    const numbers = new Float64Array(rows).fill(Number.NaN, this.length);
    numbers.set(this.numbers.subarray(0, Math.min(rows, this.length)));
    return numbers;
  }

  finish(header: string, unitsCell: string | null, rows: number): RawColumn {
    const numbers = this.cutTo(rows);
    // The room beyond is let go at once: a large table has many columns.
    this.numbers = new Float64Array(0);
    for (const row of this.texts.keys()) if (row >= rows) this.texts.delete(row);
    const cellUnit = unitInCells(this.texts, rows);
    if (cellUnit !== null) {
      for (const [row, text] of this.texts) {
        const parts = numberWithUnit.exec(text);
        if (parts?.[2] !== cellUnit) continue;
        numbers[row] = readNumber(parts[1] ?? '', this.style);
        this.texts.delete(row);
      }
    }
    return { header, unitsCell: unitsCell ?? cellUnit, numbers, texts: this.texts };
  }
}
