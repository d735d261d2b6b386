import { LossbookError } from '../errors.ts';
import { type Assigned, assignColumns } from '../log/assign.ts';
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

/**
 * A sparse table of pitch and throttle against time, altitude or speed (the first of these that it has), with an
 * optional event column. Angles without a unit are degrees, a throttle over 1.5 is in percent, other figures
 * without a unit are SI; each such reading is stated.
 * @param document the parsed JSON that the table came from; its `events` are read too. Null for other files.
 * @throws LossbookError `plan-no-axis`, `plan-no-controls`, `plan-too-short`, `plan-axis-falls`, `plan-bad-value`
 */
export function tablePlan(table: RawTable, document: unknown, file: string): Plan {
  const assigned = assignColumns(table, [], file);
  const find = (channel: ChannelName): Assigned | undefined => assigned.find((a) => a.channel === channel);
  const columns = table.columns.map((c) => c.header).join(', ');
  const axis = axes.find((name) => find(name) !== undefined);
  if (axis === undefined) throw new LossbookError('plan-no-axis', { columns }, { file });
  const assumed: string[] = [];
  const axisColumn = find(axis)!;
  const along = axis === 'time' ? readTimeColumn(axisColumn).seconds : inSi(axisColumn, assumed);
  const rows = [...along.keys()].filter((row) => Number.isFinite(along[row]!));
  rows.forEach((row, k) => {
    const before = k === 0 ? Number.NEGATIVE_INFINITY : along[rows[k - 1]!]!;
    if (along[row]! < before)
      throw new LossbookError(
        'plan-axis-falls',
        { axis, value: along[row]!, before },
        { file, row: row + 1, column: axisColumn.column.header },
      );
  });
  const values = Float64Array.from(rows, (row) => along[row]!);
  const control = (channel: 'pitch' | 'throttle'): Float64Array | null => {
    const column = find(channel);
    if (column === undefined) return null;
    const read = channel === 'pitch' ? readPitch(column, assumed) : readThrottle(column, assumed, file);
    return bridged(
      values,
      rows.map((row) => read[row]!),
    );
  };
  const pitch_rad = fromHorizon(control('pitch'), values, assumed);
  const throttle = control('throttle');
  const events = planEvents(find('event'), rows, along, document, file);
  if (pitch_rad === null && throttle === null && events.length === 0)
    throw new LossbookError('plan-no-controls', { columns }, { file });
  if (rows.length < 2 && events.length === 0) throw new LossbookError('plan-too-short', {}, { file });
  if (pitch_rad === null) assumed.push('The plan has no pitch: it is flown with the pitch that was flown.');
  if (throttle === null) assumed.push('The plan has no throttle: it is flown at full thrust.');
  return {
    name: file,
    form: 'table',
    axis,
    axisValues: values,
    pitch_rad,
    throttle,
    events,
    log: null,
    assumed,
  };
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

function readThrottle({ column, unit }: Assigned, assumed: string[], file: string): Float64Array {
  const percent = unit === null && largestMagnitude(column.numbers) > 1.5;
  if (percent) assumed.push(`Column “${column.header}” goes over 1 and is taken in percent.`);
  const out =
    unit !== null && unit.factor !== 1
      ? scaled(column.numbers, unit)
      : column.numbers.map((x) => (percent ? x / 100 : x));
  const wrong = out.findIndex((x) => x < 0 || x > 1.2);
  if (wrong >= 0)
    throw new LossbookError(
      'plan-bad-value',
      { what: 'throttle', value: column.numbers[wrong]!, expected: 'a fraction from 0 to 1, or percent' },
      { file, row: wrong + 1, column: column.header },
    );
  return out;
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
