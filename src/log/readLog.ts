import { LossbookError } from '../errors.ts';
import { counted } from '../units/figures.ts';
import { type Assigned, assignColumns } from './assign.ts';
import { type ByteSource, wholeOf } from './byteSource.ts';
import { climbCheck } from './climbCheck.ts';
import { textOfBytes, unpackedBytes } from './decode.ts';
import { delimitedTableInTurns } from './delimitedTable.ts';
import { eventTexts } from './eventTexts.ts';
import { fileKind, kindOfChannels } from './fileKind.ts';
import { type ByteChunks, gatherBytes } from './gatherBytes.ts';
import { guessColumns } from './guessColumns.ts';
import { joinRows } from './joinRows.ts';
import { looksLikeJson } from './jsonMark.ts';
import { widened } from './longTable.ts';
import { looksLikeOem } from './oemMark.ts';
import type { Centre } from './oemTable.ts';
import { plainTable, plainTableOf } from './plainTable.ts';
import type { RawColumn, RawTable } from './rawTable.ts';
import { readChannels } from './readChannels.ts';
import { repairChannels } from './repairs.ts';
import { roundingStep } from './resolution.ts';
import { roundingNote } from './roundingNote.ts';
import { finiteCount } from './statistics.ts';
import { orderRows, splitParts } from './timeAxis.ts';
import { readTimeColumn } from './timeColumn.ts';
import type { ChannelName, ColumnChoice, Log, QualityNote } from './types.ts';
import { Pace, type Watch } from './watch.ts';

/** How a log is to be read. */
export interface ReadOptions extends Watch {
  /** File name, for messages only. */
  readonly name: string;
  /** The user's own reading of columns; a function is asked with the file's headers once they are known. */
  readonly map?: readonly ColumnChoice[] | ((headers: readonly string[]) => readonly ColumnChoice[]);
  /** Is shown the file's columns as they stand, once they are known. */
  readonly onColumns?: (columns: readonly RawColumn[]) => void;
  /** 1-based flight in a file that holds several; the first when left out. */
  readonly part?: number;
  /** World that an ephemeris's states circle; the one that the file names when left out. */
  readonly centre?: Centre;
}

/** Rows that a review needs. */
const LEAST_ROWS = 10;

/**
 * Reads a flight log from its bytes, or from a file of which any part can be read, which then need not lie in
 * memory whole: finds the table, its channels and their units by content, repairs what can be repaired and notes
 * every repair. All values come back in SI units and radians over one strictly increasing time axis.
 * @throws LossbookError `file-empty`, `log-*` for what cannot be read as a log, `map-*` for a choice that does
 * not fit the file, `part-missing`.
 */
export async function readLog(file: Uint8Array | ByteSource, options: ReadOptions): Promise<Log> {
  const { name } = options;
  const pace = new Pace(options, name);
  pace.check();
  if (!('read' in file))
    return logOfTable(await readTable({ bytes: file }, options, pace, 0), file.length, options, pace);
  const plain = await plainTableOf(file, name, pace, (part) => ROWS_READ * part);
  if (plain !== null) return logOfTable({ table: plain, notes: [] }, file.size, options, pace);
  // The bytes are let go as soon as rows are made of them.
  const held: HeldBytes = { bytes: await wholeOf(file, name) };
  return logOfTable(await readTable(held, options, pace, FETCHED), file.size, options, pace);
}

/** How a log is to be read that comes in pieces. */
export interface StreamOptions extends ReadOptions {
  /** Size of the file in bytes where it is known: progress is told from it, and no room is made twice. */
  readonly totalBytes?: number;
}

/** Share of the work that lies in fetching the bytes, and in reading rows from them. */
const FETCHED = 0.2;
const ROWS_READ = 0.9;

/**
 * Reads a flight log as `readLog` does from a file that comes in pieces of any size, such as `blob.stream()` or a
 * file's read stream.
 * @throws what `readLog` throws, and what the source throws.
 */
export async function readLogStream(chunks: ByteChunks, options: StreamOptions): Promise<Log> {
  const pace = new Pace(options, options.name);
  const held: HeldBytes = {
    bytes: await gatherBytes(chunks, options.totalBytes, options.name, pace, (part) => FETCHED * part),
  };
  const size = held.bytes?.length ?? 0;
  return logOfTable(await readTable(held, options, pace, FETCHED), size, options, pace);
}

async function logOfTable(file: FileTable, bytes: number, options: ReadOptions, pace: Pace): Promise<Log> {
  const { name } = options;
  const table = widened(file.table);
  if (pace.due) await pace.report(ROWS_READ);
  options.onColumns?.(table.columns);
  const map =
    typeof options.map === 'function' ? options.map(table.columns.map((c) => c.header)) : options.map;
  const named = assignColumns(table, map ?? [], name);
  const assigned = table.named ? named : [...named, ...guessColumns(table, named)];
  const headers = listed(table.columns.map((column) => column.header));
  const timeColumn = assigned.find((a) => a.channel === 'time');
  checkIsLog(assigned, timeColumn, headers, name);
  const notes: QualityNote[] = [...file.notes, ...table.notes];

  const clock = readTimeColumn(timeColumn);
  const split = splitParts(clock.seconds, motionContinues(assigned));
  const part = options.part ?? 1;
  const rowsOfPart = split.parts[part - 1];
  if (rowsOfPart === undefined) {
    throw new LossbookError('part-missing', { part, parts: split.parts.length }, { file: name });
  }
  const whole = joinRows(rowsOfPart, split.time, assigned);
  const mass = whole.assigned.find((a) => a.channel === 'mass');
  const ordered = orderRows(whole.rows, split.time);
  const last = mass?.column.numbers[ordered.rows.at(-1) ?? -1];
  // Few vehicles break up: its reader is loaded with the first that does.
  const axis =
    mass !== undefined && last === 0
      ? (await import('./goneVehicle.ts')).beforeGone(ordered, mass.column.numbers)
      : ordered;
  if (axis.rows.length < LEAST_ROWS)
    throw new LossbookError('log-too-short', { rows: axis.rows.length }, { file: name });
  notes.push(
    ...clock.notes,
    ...split.notes,
    ...whole.notes,
    ...axis.notes,
    ...partNotes(split.parts, part, table.rows, clock.seconds),
  );

  const read = readChannels(whole.assigned, clock, axis);
  const steps = new Map<Float64Array, number | null>();
  const stepOf = (values: Float64Array): number | null => {
    const step = steps.has(values) ? (steps.get(values) ?? null) : roundingStep(values);
    steps.set(values, step);
    return step;
  };
  const factors = Object.fromEntries(read.readings.map((reading) => [reading.channel, reading.factor]));
  const repaired = repairChannels(read.time, read.channels, axis.rows, factors, stepOf);
  const climb = climbCheck(read.time, repaired.channels, read.readings);
  notes.push(...read.notes, ...repaired.notes, ...(climb === null ? [] : [climb]));
  checkUsable(repaired.channels, name);

  const resolution: Partial<Record<ChannelName, number>> = {};
  for (const [channel, values] of Object.entries(repaired.channels) as [ChannelName, Float64Array][]) {
    const step = stepOf(values);
    if (step === null) continue;
    resolution[channel] = step;
    const rounded = roundingNote(channel, values, step, axis.rows);
    if (rounded !== null) notes.push(rounded);
  }
  const used = new Set(read.readings.map((reading) => reading.columnIndex));
  return {
    source: {
      name,
      bytes,
      form: table.form,
      rows: table.rows,
      part,
      parts: split.parts.length,
    },
    time: read.time,
    channels: repaired.channels,
    eventTexts: eventTexts(whole.assigned, axis.rows, read.time),
    readings: read.readings,
    unusedColumns: table.columns.filter((_, i) => !used.has(i)).map((column) => column.header),
    notes,
    resolution,
  };
}

/** Names for a message: the first thirty, each cut to a length that can be read. */
function listed(headers: readonly string[]): string {
  const shown = headers.slice(0, 30).map((header) => header.slice(0, 60));
  return `${shown.join(', ')}${headers.length > shown.length ? `, … (${headers.length} in all)` : ''}`;
}

/** The table of a file, with notes on what had to be mended to read its text. */
interface FileTable {
  readonly table: RawTable;
  readonly notes: readonly QualityNote[];
}

interface HeldBytes {
  bytes: Uint8Array | null;
}

async function readTable(
  held: HeldBytes,
  { name, centre }: ReadOptions,
  pace: Pace,
  from: number,
): Promise<FileTable> {
  const share = (part: number): number => from + (ROWS_READ - from) * part;
  const unpacked = await unpackedBytes(held.bytes ?? new Uint8Array(0), name);
  held.bytes = unpacked.content;
  const plain = await plainTable(held.bytes, name, pace, share);
  if (plain !== null) return { table: plain, notes: unpacked.notes };
  const decoded = textOfBytes(held.bytes, name);
  held.bytes = null;
  const table = await textTable(decoded.text, name, centre ?? null, pace, share);
  return { table, notes: [...unpacked.notes, ...decoded.notes] };
}

async function textTable(
  text: string,
  name: string,
  centre: Centre | null,
  pace: Pace,
  share: (part: number) => number,
): Promise<RawTable> {
  // Readers of the rarer forms are loaded with the first file that needs them.
  if (looksLikeOem(text)) return (await import('./oemTable.ts')).oemTable(text, name, centre);
  if (!looksLikeJson(text)) return delimitedTableInTurns(text, name, pace, share);
  if (fileKind(text) === 'card') throw new LossbookError('log-is-a-card', {}, { file: name });
  const [{ jsonTable }, { parseJson }] = await Promise.all([
    import('./jsonTable.ts'),
    import('./jsonText.ts'),
  ]);
  try {
    return jsonTable(parseJson(text, name), name);
  } catch (error) {
    // Lines such as "[12:00:01] 5.2 …" begin like JSON.
    if (!(error instanceof LossbookError) || error.code !== 'log-json-broken' || !/^\s*\[/u.test(text))
      throw error;
    try {
      return await delimitedTableInTurns(text, name, pace, share);
    } catch {
      throw error;
    }
  }
}

function checkIsLog(
  assigned: readonly Assigned[],
  time: Assigned | undefined,
  columns: string,
  file: string,
): asserts time is Assigned {
  const found = new Set(assigned.map((a) => a.channel));
  if (kindOfChannels(found) === 'plan') throw new LossbookError('log-is-a-plan', {}, { file });
  if (time === undefined) throw new LossbookError('log-no-time', { columns }, { file });
  const height = found.has('altitude') || (found.has('positionX') && found.has('positionY'));
  const motion =
    found.has('speed') ||
    found.has('inertialSpeed') ||
    (found.has('velocityX') && found.has('velocityY')) ||
    (found.has('verticalSpeed') && found.has('horizontalSpeed'));
  if (!height || !motion) throw new LossbookError('log-no-motion', { columns }, { file });
}

/** Altitude and speed must each be there in ten rows; they may come in turns. */
function checkUsable(channels: Readonly<Partial<Record<ChannelName, Float64Array>>>, file: string): void {
  const { altitude, speed, inertialSpeed, verticalSpeed } = channels;
  const present = (values: Float64Array | undefined): number =>
    values === undefined ? 0 : finiteCount(values);
  const rows = Math.min(present(altitude), present(speed ?? inertialSpeed ?? verticalSpeed));
  if (rows < LEAST_ROWS) throw new LossbookError('log-too-short', { rows }, { file });
}

/** Whether altitude and speed go on across two rows as they do between neighbours elsewhere. */
function motionContinues(assigned: readonly Assigned[]): (a: number, b: number) => boolean {
  const columns = assigned
    .filter(({ channel }) => channel === 'altitude' || channel === 'speed' || channel === 'inertialSpeed')
    .map(({ column }) => column.numbers);
  return (a, b) =>
    columns.length > 0 &&
    columns.every((values) => {
      const jump = Math.abs(values[b]! - values[a]!);
      let usual = 0;
      for (let i = Math.max(1, a - 20); i <= a; i++) {
        const d = Math.abs(values[i]! - values[i - 1]!);
        if (d > usual) usual = d;
      }
      return jump <= 5 * usual + 0.001 * Math.abs(values[a]!);
    });
}

function partNotes(
  parts: readonly Int32Array[],
  part: number,
  rows: number,
  time: Float64Array,
): QualityNote[] {
  const notes: QualityNote[] = [];
  if (parts.length > 1) {
    notes.push({
      code: 'several-flights',
      channel: 'time',
      rows: null,
      count: parts.length,
      text: `The clock begins again: the file holds ${parts.length} flights, and this is number ${part}; the others are read by their number (--part ${part === 1 ? 2 : 1}).`,
    });
  }
  const timeless = rows - finiteCount(time);
  if (timeless > 0) {
    notes.push({
      code: 'rows-without-time',
      channel: 'time',
      rows: null,
      count: timeless,
      text: `Left out: ${counted(timeless, 'row', 'rows')} without a readable time.`,
    });
  }
  return notes;
}
