import { LossbookError } from '../errors.ts';
import { logOfFlight } from './book/book.ts';
import type { BookFlight, TextFile } from './book/types.ts';
import type { FileHandle } from './protocol.ts';

/** The files of one flight. The log is a handle: its content is read by the worker alone. */
export interface FlightFiles {
  readonly log: FileHandle;
  readonly card: TextFile | null;
  readonly plan: TextFile | null;
  /** 1-based flight in a log that holds several. */
  readonly part: number;
}

/** A flight that can be opened. */
export interface FlightSource {
  /** `book:ID`, `sample:NAME` or `open:NUMBER`; stands in the URL. */
  readonly id: string;
  readonly origin: 'book' | 'opened' | 'sample';
  readonly title: string;
  readonly note: string;
  /** Samples that belong together; absent for all others. */
  readonly set?: string;
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

interface Address {
  readonly address: string;
  readonly name: string;
}

async function fetchFlight(log: Address, card: Address | null): Promise<FlightFiles> {
  const [blob, text] = await Promise.all([
    fetched(log.address, log.name).then((r) => r.blob()),
    card === null ? null : fetched(card.address, card.name).then((r) => r.text()),
  ]);
  return {
    log: { name: log.name, blob },
    card: card === null || text === null ? null : { name: card.name, text },
    plan: null,
    part: 1,
  };
}

/** A JSON list beside the page; null where there is none. */
async function fetchList<T>(address: string): Promise<readonly T[] | null> {
  try {
    const response = await fetch(address);
    const list: unknown = response.ok ? await response.json() : null;
    return Array.isArray(list) ? (list as T[]) : null;
  } catch {
    return null;
  }
}

/** Flights that `lossbook open` was given on the command line; null where the page comes from another server. */
export async function openedFlights(): Promise<readonly FlightSource[] | null> {
  const list = await fetchList<{ name: string; log: string; card: string | null }>('open.json');
  if (list === null) return null;
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
    set?: string;
  }>('samples/index.json');
  const beside = (name: string) => ({ address: `samples/${name}`, name });
  return (list ?? []).map((flight) => ({
    id: `sample:${flight.id}`,
    origin: 'sample',
    title: flight.title,
    note: flight.note,
    ...(flight.set === undefined ? {} : { set: flight.set }),
    load: () => fetchFlight(beside(flight.log), flight.card === null ? null : beside(flight.card)),
  }));
}

/** A flight of the book, to be opened from there. */
export function bookSource(flight: BookFlight): FlightSource {
  return {
    id: `book:${flight.id}`,
    origin: 'book',
    title: flight.title,
    note: flight.summary.verdict,
    load: async () => {
      const blob = await logOfFlight(flight.id);
      if (blob === null) {
        throw new LossbookError(
          'file-unreadable',
          { reason: 'it is no longer in the logbook' },
          { file: flight.logName },
        );
      }
      return { log: { name: flight.logName, blob }, card: flight.card, plan: flight.plan, part: flight.part };
    },
  };
}
