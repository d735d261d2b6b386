import { LossbookError } from '../errors.ts';
import { type Assigned, assignColumns } from '../log/assign.ts';
import { isMissingMark } from '../log/numbers.ts';
import { quantityOf } from '../log/quantities.ts';
import type { RawTable } from '../log/rawTable.ts';
import { largestMagnitude } from '../log/statistics.ts';
import { readTimeColumn } from '../log/timeColumn.ts';
import type { ChannelName } from '../log/types.ts';
import type { Unit } from '../units/units.ts';
import { planEvents } from './planEvents.ts';
import type { Plan, PlanAxis } from './types.ts';

const DEGREE = Math.PI / 180;
const axes: readonly PlanAxis[] = ['time', 'altitude', 'speed'];

/** What a table makes as a plan: every fault that it has, or the plan. */
export type ReadTable =
  | { readonly plan: Plan; readonly faults: readonly [] }
  | { readonly plan: null; readonly faults: readonly [LossbookError, ...LossbookError[]] };

/**
 * A sparse table of pitch and throttle against time, altitude or speed (the first of these that it has), with an
 * optional event column. Angles without a unit are degrees, a throttle over 1.5 is in percent, other figures
 * without a unit are SI; each such reading is stated.
 * @param document the parsed JSON that the table came from; its `events` are read too. Null for other files.
 * @returns the plan, or all that is wrong with the table, row by row: `plan-no-axis`, `plan-no-controls`,
 * `plan-too-short`, `plan-axis-falls`, `plan-row-unplaced`, `plan-bad-value`, `plan-unknown-event`
 */
export function tablePlan(table: RawTable, document: unknown, file: string): ReadTable {
  const faults: LossbookError[] = [];
  const assigned = assignColumns(table, [], file);
  const find = (channel: ChannelName): Assigned | undefined => assigned.find((a) => a.channel === channel);
  const columns = table.columns.map((c) => c.header).join(', ');
  const axis = axes.find((name) => find(name) !== undefined);
  if (axis === undefined) return faulty(new LossbookError('plan-no-axis', { columns }, { file }));
  const assumed: string[] = [];
  const axisColumn = find(axis)!;
  const along = axis === 'time' ? readTimeColumn(axisColumn).seconds : inSi(axisColumn, assumed);
  const rows = [...along.keys()].filter((row) => Number.isFinite(along[row]!));
  faults.push(...unplacedRows(axisColumn, along, [find('pitch'), find('throttle'), find('event')], file));
  rows.forEach((row, k) => {
    const before = k === 0 ? Number.NEGATIVE_INFINITY : along[rows[k - 1]!]!;
    if (along[row]! < before)
      faults.push(
        new LossbookError(
          'plan-axis-falls',
          { axis, value: along[row]!, before, unit: axisUnits[axis] },
          { file, row: row + 1, column: axisColumn.column.header },
        ),
      );
  });
  const values = Float64Array.from(rows, (row) => along[row]!);
  const control = (channel: 'pitch' | 'throttle'): Float64Array | null => {
    const column = find(channel);
    if (column === undefined) return null;
    faults.push(...unreadCells(column, expected[channel], file));
    const read = channel === 'pitch' ? readPitch(column, assumed) : readThrottle(column, assumed);
    if (channel === 'throttle') faults.push(...wrongThrottles(column, read, file));
    return bridged(
      values,
      rows.map((row) => read[row]!),
    );
  };
  const pitch_rad = fromHorizon(control('pitch'), values, assumed);
  const throttle = control('throttle');
  const { events, unknown } = planEvents(find('event'), rows, along, document, file);
  faults.push(...unknown);
  if (faults.length > 0) return faulty(...faults.sort((a, b) => (a.where.row ?? 0) - (b.where.row ?? 0)));
  if (pitch_rad === null && throttle === null && events.length === 0)
    return faulty(new LossbookError('plan-no-controls', { columns }, { file }));
  if (rows.length < 2 && events.length === 0)
    return faulty(new LossbookError('plan-too-short', {}, { file }));
  if (pitch_rad === null) assumed.push('The plan has no pitch: it is flown with the pitch that was flown.');
  if (throttle === null) assumed.push('The plan has no throttle: it is flown at full thrust.');
  return {
    plan: {
      name: file,
      form: 'table',
      axis,
      axisValues: values,
      pitch_rad,
      throttle,
      events,
      log: null,
      assumed,
    },
    faults: [],
  };
}

const axisUnits = { time: 's', altitude: 'm', speed: 'm/s' } as const;

const expected = {
  pitch: 'an angle above the horizon, in degrees',
  throttle: 'a fraction from 0 to 1, or percent',
} as const;

function faulty(...faults: LossbookError[]): ReadTable {
  const [first, ...rest] = faults;
  return { plan: null, faults: [first!, ...rest] };
}

/** Rows that say something, but not where on the axis. */
function unplacedRows(
  axis: Assigned,
  along: Float64Array,
  others: readonly (Assigned | undefined)[],
  file: string,
): LossbookError[] {
  const told = (row: number): boolean =>
    others.some(
      (o) => o !== undefined && (Number.isFinite(o.column.numbers[row]!) || o.column.texts.has(row)),
    );
  return [...along.keys()]
    .filter((row) => !Number.isFinite(along[row]!) && told(row))
    .map((row) => {
      const text = axis.column.texts.get(row);
      const read = text === undefined || isMissingMark(text) ? 'none' : `“${text}”`;
      return new LossbookError(
        'plan-row-unplaced',
        { axis: axis.channel, read },
        { file, row: row + 1, column: axis.column.header },
      );
    });
}

/** Cells that hold words where a control's figure belongs. */
function unreadCells({ column, channel }: Assigned, expects: string, file: string): LossbookError[] {
  return [...column.texts]
    .filter(([, text]) => !isMissingMark(text))
    .map(
      ([row, text]) =>
        new LossbookError(
          'plan-bad-value',
          { what: channel, value: `“${text}”`, expected: expects },
          { file, row: row + 1, column: column.header },
        ),
    );
}

function wrongThrottles({ column }: Assigned, read: Float64Array, file: string): LossbookError[] {
  return [...read.keys()]
    .filter((row) => read[row]! < 0 || read[row]! > 1.2)
    .map(
      (row) =>
        new LossbookError(
          'plan-bad-value',
          { what: 'throttle', value: column.numbers[row]!, expected: expected.throttle },
          { file, row: row + 1, column: column.header },
        ),
    );
}

function inSi({ column, unit, channel }: Assigned, assumed: string[]): Float64Array {
  if (unit !== null) return column.numbers.map((x) => x * unit.factor + unit.offset);
  if (quantityOf[channel] !== 'ratio')
    assumed.push(
      `Column “${column.header}” names no unit and is taken in ${channel === 'speed' ? 'm/s' : 'm'}.`,
    );
  return column.numbers;
}

function scaled(numbers: Float64Array, unit: Unit): Float64Array {
  return numbers.map((x) => x * unit.factor + unit.offset);
}

function readPitch({ column, unit }: Assigned, assumed: string[]): Float64Array {
  if (unit !== null) return scaled(column.numbers, unit);
  // Radians of a pitch program lie under π/2; degrees reach far over it, if only on the pad.
  const inRadians = largestMagnitude(column.numbers) <= Math.PI / 2 + 0.01;
  assumed.push(
    `Column “${column.header}” names no unit and is taken in ${inRadians ? 'radians' : 'degrees'}.`,
  );
  return inRadians ? column.numbers : column.numbers.map((x) => x * DEGREE);
}

function readThrottle({ column, unit }: Assigned, assumed: string[]): Float64Array {
  if (unit !== null && unit.factor !== 1) return scaled(column.numbers, unit);
  const percent = unit === null && largestMagnitude(column.numbers) > 1.5;
  if (percent) assumed.push(`Column “${column.header}” goes over 1 and is taken in percent.`);
  return column.numbers.map((x) => (percent ? x / 100 : x));
}

/** A rocket stands upright: a pitch that begins near 0 and grows counts from the vertical. */
function fromHorizon(pitch: Float64Array | null, axis: Float64Array, assumed: string[]): Float64Array | null {
  if (pitch === null || pitch.length === 0) return null;
  const startsAtLiftOff = axis[0]! <= 5;
  const turned = startsAtLiftOff && pitch[0]! < 20 * DEGREE && largestMagnitude(pitch) > 30 * DEGREE;
  if (!turned) return pitch;
  assumed.push(
    'Pitch is 0° at lift-off, so it counts from the vertical and is turned to count from the horizon.',
  );
  return pitch.map((x) => Math.PI / 2 - x);
}

/** Empty cells filled by straight lines along the axis, ends held; null where the column is empty. */
function bridged(axis: Float64Array, cells: readonly number[]): Float64Array | null {
  const known = cells.flatMap((value, i) => (Number.isFinite(value) ? [i] : []));
  if (known.length === 0) return null;
  return Float64Array.from(cells, (value, i) => {
    if (Number.isFinite(value)) return value;
    const after = known.find((k) => k > i);
    const before = known.findLast((k) => k < i);
    if (before === undefined) return cells[after!]!;
    if (after === undefined) return cells[before]!;
    const span = axis[after]! - axis[before]!;
    const share = span > 0 ? (axis[i]! - axis[before]!) / span : 1;
    return cells[before]! + share * (cells[after]! - cells[before]!);
  });
}
