import { type ColumnChoice, channelNames } from '../../log/types.ts';
import type { RememberedColumns } from '../protocol.ts';
import type { BookFlight, FlightSummary, TextFile } from './types.ts';

/** What `book.json` in an exported logbook says. Logs, cards and plans lie beside it as files of their own. */
export interface BookFile {
  readonly schema: typeof bookSchemaName;
  readonly exportedAt: string;
  readonly flights: readonly {
    readonly flight: BookFlight;
    /** Path of the log in the archive. */
    readonly log: string;
  }[];
  readonly columns: readonly RememberedColumns[];
}

export const bookSchemaName = 'lossbook-book/1';
/** First in the archive. */
export const bookFileName = 'book.json';

type Fields = Readonly<Record<string, unknown>>;

function fieldsOf(value: unknown): Fields | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : null;
}

const isText = (value: unknown): value is string => typeof value === 'string';
const textOrNull = (value: unknown): string | null => (isText(value) ? value : null);
const numberOrNull = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null;
const texts = (value: unknown): string[] => (Array.isArray(value) ? value.filter(isText) : []);

function textFile(value: unknown): TextFile | null {
  const { name, text } = fieldsOf(value) ?? {};
  return isText(name) && isText(text) ? { name, text } : null;
}

function summary(value: unknown): FlightSummary {
  const s = fieldsOf(value) ?? {};
  return {
    verdictCode: (textOrNull(s.verdictCode) ?? 'undetermined') as FlightSummary['verdictCode'],
    verdict: textOrNull(s.verdict) ?? '',
    margin_m_s: numberOrNull(s.margin_m_s),
    mission: textOrNull(s.mission),
    world: textOrNull(s.world) ?? '',
    vehicle: textOrNull(s.vehicle),
    pilot: textOrNull(s.pilot),
    attempt: numberOrNull(s.attempt),
    date: textOrNull(s.date),
  };
}

/** A flight out of a file that anybody may have written; null where what makes it a flight is missing. */
function flight(value: unknown): BookFlight | null {
  const f = fieldsOf(value);
  if (f === null || !isText(f.id) || f.id === '' || !isText(f.logName)) return null;
  const part = numberOrNull(f.part) ?? 1;
  const addedAt = textOrNull(f.addedAt) ?? '';
  return {
    id: f.id,
    title: textOrNull(f.title) ?? f.logName,
    logName: f.logName,
    logBytes: numberOrNull(f.logBytes) ?? 0,
    card: textFile(f.card),
    plan: textFile(f.plan),
    part: Number.isInteger(part) && part > 0 ? part : 1,
    pilot: textOrNull(f.pilot),
    vehicle: textOrNull(f.vehicle),
    tags: texts(f.tags),
    notes: textOrNull(f.notes) ?? '',
    summary: summary(f.summary),
    addedAt,
    changedAt: textOrNull(f.changedAt) ?? addedAt,
    deletedAt: null,
  };
}

function choice(value: unknown): ColumnChoice | null {
  const { channel, column, unit } = fieldsOf(value) ?? {};
  const known = ([...channelNames, 'none'] as const).find((name) => name === channel);
  return known !== undefined && isText(column) ? { channel: known, column, unit: textOrNull(unit) } : null;
}

/** What is understood of a `book.json`; null when it is none. */
export function readBookFile(text: string): Omit<BookFile, 'schema' | 'exportedAt'> | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  const book = fieldsOf(value);
  if (book?.schema !== bookSchemaName || !Array.isArray(book.flights)) return null;
  return {
    flights: book.flights.flatMap((entry: unknown) => {
      const { flight: about, log } = fieldsOf(entry) ?? {};
      const read = flight(about);
      return read !== null && isText(log) ? [{ flight: read, log }] : [];
    }),
    columns: (Array.isArray(book.columns) ? book.columns : []).flatMap((entry: unknown) => {
      const { headers, choices } = fieldsOf(entry) ?? {};
      const read = (Array.isArray(choices) ? choices : []).map(choice).filter((c) => c !== null);
      return read.length > 0 && Array.isArray(headers) ? [{ headers: texts(headers), choices: read }] : [];
    }),
  };
}
