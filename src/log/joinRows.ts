import { counted } from '../units/figures.ts';
import type { Assigned } from './assign.ts';
import { risesAlong } from './timeAxis.ts';
import type { QualityNote } from './types.ts';

/** Rows of one flight after joining, with the columns that hold the joined values. */
export interface JoinedRows {
  readonly rows: Int32Array;
  readonly assigned: readonly Assigned[];
  readonly notes: readonly QualityNote[];
}

/**
 * Joins rows of one time that complement each other, as where each channel or each event has a line of its own.
 * Rows that disagree in any column stay apart.
 */
export function joinRows(rows: Int32Array, time: Float64Array, assigned: readonly Assigned[]): JoinedRows {
  if (risesAlong(rows, time)) return { rows, assigned, notes: [] };
  const others = assigned.filter((a) => a.channel !== 'time');
  const kept: number[] = [];
  const joins: (readonly [into: number, from: number])[] = [];
  const valuesOf = (row: number): Assigned[] => others.filter((a) => has(a, row));
  /** Columns in which the last kept row has a value, its own or a joined one; asked for only where times repeat. */
  let taken: Set<Assigned> | null = null;
  for (const row of rows) {
    const before = kept.at(-1);
    if (before !== undefined && time[before] === time[row]) {
      taken ??= new Set(valuesOf(before));
      const here = valuesOf(row);
      if (here.length > 0 && !here.some((a) => taken?.has(a))) {
        joins.push([before, row]);
        for (const a of here) taken.add(a);
        continue;
      }
    }
    kept.push(row);
    taken = null;
  }
  if (joins.length === 0) return { rows, assigned, notes: [] };
  return {
    rows: Int32Array.from(kept),
    assigned: assigned.map((a) => joined(a, joins)),
    notes: [
      {
        code: 'rows-joined',
        channel: null,
        rows: [(joins[0]?.[1] ?? 0) + 1, (joins.at(-1)?.[1] ?? 0) + 1],
        count: joins.length,
        text: `Joined to the row before: ${counted(joins.length, 'row', 'rows')} of the same time with values only where that has none.`,
      },
    ],
  };
}

function has(a: Assigned, row: number): boolean {
  return !Number.isNaN(a.column.numbers[row] ?? Number.NaN) || a.column.texts.has(row);
}

function joined(a: Assigned, joins: readonly (readonly [number, number])[]): Assigned {
  if (a.channel === 'time' || !joins.some(([, from]) => has(a, from))) return a;
  const numbers = Float64Array.from(a.column.numbers);
  const texts = new Map(a.column.texts);
  for (const [into, from] of joins) {
    const x = numbers[from] ?? Number.NaN;
    if (!Number.isNaN(x)) numbers[into] = x;
    const text = texts.get(from);
    if (text !== undefined) texts.set(into, text);
  }
  return { ...a, column: { ...a.column, numbers, texts } };
}
