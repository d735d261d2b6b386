import { LossbookError } from '../../errors.ts';
import { bookFlights, keepFlight, logOfFlight, rememberColumns, rememberedColumns } from './book.ts';
import { bookFileName, readBookFile } from './bookFile.ts';
import { readZip } from './readZip.ts';

/** What came of an exported logbook. */
export interface BroughtBack {
  readonly came: number;
  /** Flights that were in this book already, as new as in the file. */
  readonly there: number;
}

/**
 * Brings an exported logbook back, flight by flight, each whole. A flight that is in the book already gives way only
 * to a later state of itself; what this browser remembers of columns stays.
 * @param goOn false ends it between two flights
 * @throws LossbookError `book-broken`
 */
export async function importBook(
  file: File,
  say: (text: string) => void,
  goOn: () => boolean,
): Promise<BroughtBack> {
  const broken = (reason: string) => new LossbookError('book-broken', { reason }, { file: file.name });
  const files = await readZip(file, file.name);
  const list = await files.get(bookFileName)?.();
  if (list === undefined) throw broken(`it holds no ${bookFileName}`);
  const book = readBookFile(await list.text());
  if (book === null) throw broken(`its ${bookFileName} cannot be read, or a later lossbook wrote it`);
  let came = 0;
  let there = 0;
  for (const [i, { flight, log }] of book.flights.entries()) {
    if (!goOn()) break;
    say(`flight ${i + 1} of ${book.flights.length}`);
    const here = bookFlights.peek().find((f) => f.id === flight.id);
    if (here !== undefined && here.changedAt >= flight.changedAt && (await logOfFlight(here.id)) !== null) {
      there++;
      continue;
    }
    const content = await files.get(log)?.();
    if (content === undefined) throw broken(`the log ${log} is not in it`);
    await keepFlight({ ...flight, logBytes: content.size }, content);
    came++;
  }
  const known = new Set(rememberedColumns.peek().map((r) => JSON.stringify(r.headers)));
  for (const columns of book.columns) {
    if (!known.has(JSON.stringify(columns.headers))) await rememberColumns(columns);
  }
  return { came, there };
}
