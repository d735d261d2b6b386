import { counted } from '../units/figures.ts';
import type { Unit } from '../units/units.ts';
import type { Assigned } from './assign.ts';
import { readClock } from './clock.ts';
import { unsignedCountdown } from './countdown.ts';
import { courseOf } from './course.ts';
import { inUnit } from './inUnit.ts';
import { finiteCount, median } from './statistics.ts';
import type { QualityNote } from './types.ts';

/** The time column in s, one entry per row of the table, NaN where unreadable. */
export interface TimeColumn {
  readonly seconds: Float64Array;
  /** The unit taken; null while only evidence from motion can tell it (then `seconds` is as written). */
  readonly unit: Unit | null;
  readonly confidence: number;
  readonly why: string;
  readonly notes: readonly QualityNote[];
}

const second: Unit = { spelling: 's', factor: 1, offset: 0 };

/** UNIX times of the years 2001 to 2096, by the unit they count in. */
const unixScales = [
  { spelling: 's', factor: 1 },
  { spelling: 'ms', factor: 1e-3 },
  { spelling: 'µs', factor: 1e-6 },
  { spelling: 'ns', factor: 1e-9 },
] as const;

/** Reads the time column, whatever its form: numbers, clock readings, dates, UNIX times. */
export function readTimeColumn(assigned: Assigned): TimeColumn {
  const read = readSigned(assigned);
  if (courseOf(read.seconds).rises) return read;
  const finite = read.seconds.filter((x) => Number.isFinite(x));
  const down = unsignedCountdown(finite);
  if (down === 0) return read;
  let left = down;
  return {
    ...read,
    seconds: read.seconds.map((x) => (Number.isFinite(x) && left-- > 0 ? -x : x)),
    notes: [
      ...read.notes,
      {
        code: 'countdown-unsigned',
        channel: 'time',
        rows: [1, down],
        count: down,
        text: `The clock counts down to zero without a sign and then up: its first ${counted(down, 'row', 'rows')} count as before zero.`,
      },
    ],
  };
}

function readSigned(assigned: Assigned): TimeColumn {
  const { column, unit } = assigned;
  const texts = column.texts.size;
  const readings = [...column.texts].map(([row, text]) => [row, readClock(text)] as const);
  const clocks = readings.filter(
    (entry): entry is [number, NonNullable<(typeof entry)[1]>] => entry[1] !== null,
  );
  if (texts > 0 && clocks.length > 0.5 * texts && clocks.length >= 0.05 * finiteCount(column.numbers)) {
    return fromClock(column.numbers, clocks, unit);
  }
  const typical = median(column.numbers);
  const unix = unixScales.find(({ factor }) => typical * factor > 1e9 && typical * factor < 4e9);
  const said = unit === null ? null : unit.spelling;
  if (unix !== undefined && (said === null || said === unix.spelling || said === 's')) {
    return fromUnix(column.numbers, unix);
  }
  if (unit !== null) {
    return {
      seconds: inUnit(column.numbers, unit),
      unit,
      confidence: 1,
      why: '',
      notes: [],
    };
  }
  return { seconds: column.numbers, unit: null, confidence: 1, why: '', notes: [] };
}

function fromClock(
  numbers: Float64Array,
  clocks: readonly (readonly [number, { seconds: number; kind: 'date' | 'clock' }])[],
  unit: Unit | null,
): TimeColumn {
  const factor = unit?.factor ?? 1;
  const seconds = numbers.map((x) => x * factor);
  const dated = clocks.filter(([, reading]) => reading.kind === 'date').length > 0.5 * clocks.length;
  for (const [row, reading] of clocks) {
    if (!dated || reading.kind === 'date') seconds[row] = reading.seconds;
  }
  if (!dated)
    return { seconds, unit: second, confidence: 0.97, why: 'the cells are clock readings', notes: [] };
  const start = firstFinite(seconds);
  return {
    seconds: seconds.map((x) => x - start),
    unit: second,
    confidence: 0.97,
    why: 'the cells are dates with times',
    notes: [countedFrom(start)],
  };
}

function fromUnix(numbers: Float64Array, scale: { spelling: string; factor: number }): TimeColumn {
  const start = firstFinite(numbers);
  return {
    // Differences first: the scale would round away the last digits of a time of day.
    seconds: numbers.map((x) => (x - start) * scale.factor),
    unit: { spelling: scale.spelling, factor: scale.factor, offset: 0 },
    confidence: 0.95,
    why: `the values are UNIX times in ${scale.spelling}`,
    notes: [countedFrom(start * scale.factor)],
  };
}

function firstFinite(values: Float64Array): number {
  return values.find((x) => Number.isFinite(x)) ?? 0;
}

function countedFrom(unixTime_s: number): QualityNote {
  const date = new Date(unixTime_s * 1000);
  const written = Number.isNaN(date.getTime()) ? 'the first row' : date.toISOString();
  return {
    code: 'time-from-date',
    channel: 'time',
    rows: null,
    count: 1,
    text: `The log counts calendar time; its seconds are counted from its first row, ${written}.`,
  };
}
