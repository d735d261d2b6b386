import { LossbookError } from '../errors.ts';
import { pairFiles } from './pairFiles.ts';

/** The files of one flight, read. */
export interface FlightFiles {
  readonly log: { readonly name: string; readonly bytes: Uint8Array };
  readonly card: { readonly name: string; readonly text: string } | null;
}

/** A flight that can be opened. */
export interface FlightSource {
  /** `sample:NAME`, `open:NUMBER` or `given:NUMBER`; stands in the URL. */
  readonly id: string;
  readonly origin: 'opened' | 'given' | 'sample';
  readonly title: string;
  readonly note: string;
  readonly load: () => Promise<FlightFiles>;
}

async function fetched(address: string, name: string): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(address);
  } catch {
    throw new LossbookError('file-unreadable', { reason: 'its server does not answer' }, { file: name });
  }
  if (!response.ok) {
    throw new LossbookError(
      'file-unreadable',
      { reason: `its server answered ${response.status}` },
      { file: name },
    );
  }
  return response;
}

async function fetchFlight(
  log: { address: string; name: string },
  card: { address: string; name: string } | null,
): Promise<FlightFiles> {
  const [logBody, cardBody] = await Promise.all([
    fetched(log.address, log.name).then((r) => r.arrayBuffer()),
    card === null ? null : fetched(card.address, card.name).then((r) => r.text()),
  ]);
  return {
    log: { name: log.name, bytes: new Uint8Array(logBody) },
    card: card === null || cardBody === null ? null : { name: card.name, text: cardBody },
  };
}

/** A JSON list beside the page; an absent or unreadable one is an empty one. */
async function fetchList<T>(address: string): Promise<readonly T[]> {
  try {
    const response = await fetch(address);
    const list: unknown = response.ok ? await response.json() : [];
    return Array.isArray(list) ? (list as T[]) : [];
  } catch {
    return [];
  }
}

/** Flights that `lossbook open` was given on the command line. */
export async function openedFlights(): Promise<readonly FlightSource[]> {
  const list = await fetchList<{ name: string; log: string; card: string | null }>('open.json');
  return list.map((flight, i) => ({
    id: `open:${i}`,
    origin: 'opened',
    title: flight.name,
    note: flight.card === null ? 'no mission card beside it' : 'with its mission card',
    load: () =>
      fetchFlight(
        { address: flight.log, name: flight.name },
        flight.card === null
          ? null
          : { address: flight.card, name: `${flight.name.replace(/\.[^.]*$/, '')}.mission.json` },
      ),
  }));
}

/** The invented flights that come with the page. */
export async function sampleFlights(): Promise<readonly FlightSource[]> {
  const list = await fetchList<{
    id: string;
    title: string;
    log: string;
    card: string | null;
    note: string;
  }>('samples/index.json');
  const beside = (name: string) => ({ address: `samples/${name}`, name });
  return list.map((flight) => ({
    id: `sample:${flight.id}`,
    origin: 'sample',
    title: flight.title,
    note: flight.note,
    load: () => fetchFlight(beside(flight.log), flight.card === null ? null : beside(flight.card)),
  }));
}

async function readFile(file: File): Promise<Uint8Array> {
  try {
    return new Uint8Array(await file.arrayBuffer());
  } catch {
    throw new LossbookError(
      'file-unreadable',
      { reason: 'the browser could not read it (is it a folder?)' },
      { file: file.name },
    );
  }
}

/** The text of a mission card. */
export async function readCard(file: File): Promise<{ name: string; text: string }> {
  return { name: file.name, text: new TextDecoder().decode(await readFile(file)) };
}

let given = 0;

/** Files that were dropped or picked together, sorted into flights; nothing is read yet. */
export function givenFlights(files: readonly File[]): {
  readonly flights: readonly FlightSource[];
  readonly loneCards: readonly File[];
  readonly plans: readonly File[];
} {
  const paired = pairFiles(files);
  const flights = paired.flights.map(({ log, card }): FlightSource => {
    given += 1;
    return {
      id: `given:${given}`,
      origin: 'given',
      title: log.name,
      note: card === null ? 'no mission card given' : `with ${card.name}`,
      load: async () => ({
        log: { name: log.name, bytes: await readFile(log) },
        card: card === null ? null : await readCard(card),
      }),
    };
  });
  return { flights, loneCards: paired.loneCards, plans: paired.plans };
}
