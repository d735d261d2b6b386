import { bookFlights, logOfFlight, rememberedColumns } from './book.ts';
import { type BookFile, bookFileName, bookSchemaName } from './bookFile.ts';
import type { BookFlight } from './types.ts';
import { writeZip, type ZipEntry } from './writeZip.ts';

/** A title as the name of a folder on any system. */
function folderName(title: string): string {
  const safe = [...title.normalize('NFC')]
    .map((c) => (/[\p{L}\p{N} ,.()_+=-]/u.test(c) ? c : '_'))
    .join('')
    .replace(/^[. ]+|[. ]+$/g, '')
    .slice(0, 80);
  return safe === '' ? 'flight' : safe;
}

/** A flight's files in a folder of its own, the card under the name by which a log finds it. */
async function filesOf(flight: BookFlight, number: number): Promise<ZipEntry[]> {
  const log = await logOfFlight(flight.id);
  if (log === null) return [];
  const folder = `flights/${String(number).padStart(4, '0')} ${folderName(flight.title)}`;
  const logName = folderName(flight.logName);
  const base = logName.replace(/\.gz$/i, '').replace(/\.[^.]*$/, '');
  const texts = [
    { file: flight.card, name: `${base}.mission.json` },
    { file: flight.plan, name: `${base}.plan.${/\.json$/i.test(flight.plan?.name ?? '') ? 'json' : 'csv'}` },
  ];
  return [
    { path: `${folder}/${logName}`, content: log },
    ...texts.flatMap(({ file, name }) =>
      file === null ? [] : [{ path: `${folder}/${name}`, content: new Blob([file.text]) }],
    ),
  ];
}

/**
 * The whole logbook as one ZIP archive: `book.json` with everything that is known of the flights, and each flight's
 * log, card and plan as the files they were.
 * @throws LossbookError `book-too-large`
 */
export async function exportBook(onFlight: (done: number, total: number) => void): Promise<Blob> {
  const flights = [...bookFlights.peek()].sort((a, b) => a.addedAt.localeCompare(b.addedAt));
  const kept: BookFile['flights'][number][] = [];
  const entries: ZipEntry[] = [];
  for (const [i, flight] of flights.entries()) {
    const files = await filesOf(flight, i + 1);
    const [log] = files;
    if (log === undefined) continue;
    kept.push({ flight, log: log.path });
    entries.push(...files);
  }
  const book: BookFile = {
    schema: bookSchemaName,
    exportedAt: new Date().toISOString(),
    flights: kept,
    columns: rememberedColumns.peek(),
  };
  const list = { path: bookFileName, content: new Blob([JSON.stringify(book, null, 1)]) };
  return writeZip([list, ...entries], (done) => onFlight(done, entries.length));
}
