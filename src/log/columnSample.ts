import type { RawColumn } from './rawTable.ts';

/** A glance at one column as it stands in the file, before anything is made of it. */
export interface ColumnSample {
  /** Header as written; `column N` where the file has none. */
  readonly header: string;
  /** Unit written elsewhere than in the header; null where none is. */
  readonly unitsCell: string | null;
  /** The first cells that hold something, as read: numbers by their value. */
  readonly first: readonly string[];
  /** Rows with a number. */
  readonly numbers: number;
  /** Rows with a text that is no number. */
  readonly texts: number;
  /** Lowest and highest number of each block of rows in turn, for a small chart; null where a block has none. */
  readonly shape: readonly (number | null)[];
}

const FIRST = 4;
const LONGEST = 40;
/** Blocks of rows that the small chart is drawn from. */
const BLOCKS = 60;

/** A glance at a column: its first values and its course, extremes kept. */
export function columnSample({ header, unitsCell, numbers, texts }: RawColumn): ColumnSample {
  const first: string[] = [];
  let count = 0;
  for (let row = 0; row < numbers.length; row++) {
    const value = numbers[row]!;
    const cell = Number.isNaN(value) ? texts.get(row) : String(value);
    if (!Number.isNaN(value)) count++;
    if (cell !== undefined && first.length < FIRST) first.push(cell.slice(0, LONGEST));
  }
  const blocks = Math.min(BLOCKS, numbers.length);
  const shape: (number | null)[] = [];
  for (let b = 0; b < blocks; b++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    const end = Math.floor(((b + 1) * numbers.length) / blocks);
    for (let row = Math.floor((b * numbers.length) / blocks); row < end; row++) {
      const value = numbers[row]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (low <= high) shape.push(low, high);
    else shape.push(null, null);
  }
  return { header, unitsCell, first, numbers: count, texts: texts.size, shape };
}
