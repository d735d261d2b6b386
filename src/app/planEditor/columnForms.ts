import type { PlanAxis } from '../../plan/types.ts';
import { entryText, numberOf, readEntry } from '../card/entries.ts';
import { altitudeIn, speedIn } from '../units.ts';
import { type Cell, type ColumnName, tidy } from './planSheet.ts';

/** How a column is named and in which unit it is written: what is shown = the cell × scale. */
export interface ColumnForm {
  readonly word: string;
  readonly unit: string;
  readonly scale: number;
}

export const axisWords: Readonly<Record<PlanAxis, string>> = {
  time: 'time',
  altitude: 'altitude',
  speed: 'speed',
};

const quantities = { time: 'time', altitude: 'length', speed: 'speed' } as const;

/** A column in the units chosen for the page. */
export function formOf(axis: PlanAxis, column: ColumnName): ColumnForm {
  if (column === 'pitch') return { word: 'pitch', unit: '°', scale: 1 };
  if (column === 'throttle') return { word: 'throttle', unit: '%', scale: 1 };
  if (column === 'event') return { word: 'event', unit: '', scale: 1 };
  const { unit, scale } =
    axis === 'altitude' ? altitudeIn() : axis === 'speed' ? speedIn() : { unit: 's', scale: 1 };
  return { word: axisWords[axis], unit, scale };
}

/** What a cell shows. */
export function cellEntry(axis: PlanAxis, column: ColumnName, cell: Cell): string {
  return typeof cell === 'number' ? entryText(cell, formOf(axis, column).scale) : (cell ?? '');
}

/** What an entry puts into a cell: a figure in the column's unit or its own, else the entry itself. */
export function readCell(axis: PlanAxis, column: ColumnName, entry: string): Cell {
  const text = entry.trim();
  if (text === '') return null;
  if (column === 'event') return text;
  if (column !== 'at') return numberOf(text.replace(/\s*[°%]$/u, '')) ?? text;
  const value = readEntry(text, formOf(axis, column).scale, quantities[axis]);
  return typeof value === 'number' ? tidy(value) : text;
}
