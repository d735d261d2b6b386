import { counted } from '../units/figures.ts';
import type { TimeAxis } from './timeAxis.ts';

/**
 * Leaves out the rows at a log's end in which the mass is zero, after rows in which it was not: a simulation writes
 * them on after the vehicle broke up, with a state that stands still. Nothing that flies weighs nothing.
 * @param mass the mass column as written, by row of the table
 */
export function beforeGone(axis: TimeAxis, mass: Float64Array): TimeAxis {
  const { rows } = axis;
  let end = rows.length;
  while (end > 0 && mass[rows[end - 1]!] === 0) end--;
  if (end === 0 || end === rows.length) return axis;
  const gone = rows.length - end;
  return {
    rows: rows.slice(0, end),
    time: axis.time.slice(0, end),
    whole: false,
    notes: [
      ...axis.notes,
      {
        code: 'vehicle-gone',
        channel: 'mass',
        rows: [rows[end]! + 1, rows.at(-1)! + 1],
        count: gone,
        text: `The mass is zero to the end of the log: nothing flies any more there, and ${counted(gone, 'row is', 'rows are')} left out.`,
      },
    ],
  };
}
