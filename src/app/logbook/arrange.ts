import { type BookFlight, pilotOf, vehicleOf } from '../book/types.ts';

/** Ways to sort, as they stand in the address, with the words for them. */
export const sortings = {
  added: 'added last',
  date: 'flown last',
  title: 'name',
  pilot: 'pilot',
  vehicle: 'vehicle',
  margin: 'margin',
} as const;

export const groupings = {
  none: 'no groups',
  pilot: 'pilot',
  vehicle: 'vehicle',
  both: 'pilot, vehicle',
} as const;

export type SortName = keyof typeof sortings;
export type GroupName = keyof typeof groupings;

/** Flights under one heading; the heading is empty where there are no groups. */
export interface FlightGroup {
  readonly heading: string;
  readonly flights: readonly BookFlight[];
}

/** Letters without accents and case. */
function plain(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** Everything about a flight that a reader may look for. */
function wordsOf(flight: BookFlight): string {
  const { summary } = flight;
  return plain(
    [
      flight.title,
      flight.logName,
      pilotOf(flight),
      vehicleOf(flight),
      summary.mission,
      summary.world,
      summary.date,
      summary.attempt === null ? null : `attempt ${summary.attempt}`,
      summary.verdict,
      ...flight.tags,
      flight.notes,
    ]
      .filter((w) => w !== null)
      .join('\n'),
  );
}

/** The flights that have every word of the search somewhere. */
export function search(flights: readonly BookFlight[], text: string): readonly BookFlight[] {
  const words = plain(text)
    .split(/\s+/)
    .filter((w) => w !== '');
  return words.length === 0
    ? flights
    : flights.filter((f) => {
        const all = wordsOf(f);
        return words.every((w) => all.includes(w));
      });
}

const order = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** What is missing stands last, whatever is sorted by. */
function lastIfMissing<T>(a: T | null, b: T | null, compare: (a: T, b: T) => number): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  return compare(a, b);
}

const comparisons: Readonly<Record<SortName, (a: BookFlight, b: BookFlight) => number>> = {
  added: (a, b) => b.addedAt.localeCompare(a.addedAt),
  date: (a, b) => lastIfMissing(a.summary.date, b.summary.date, (x, y) => order.compare(y, x)),
  title: (a, b) => order.compare(a.title, b.title),
  pilot: (a, b) => lastIfMissing(pilotOf(a), pilotOf(b), order.compare),
  vehicle: (a, b) => lastIfMissing(vehicleOf(a), vehicleOf(b), order.compare),
  margin: (a, b) => lastIfMissing(a.summary.margin_m_s, b.summary.margin_m_s, (x, y) => y - x),
};

/** Sorted; equals by name, then by when they were added, so that the order never changes by itself. */
export function sortFlights(flights: readonly BookFlight[], by: SortName): readonly BookFlight[] {
  return [...flights].sort(
    (a, b) => comparisons[by](a, b) || order.compare(a.title, b.title) || a.addedAt.localeCompare(b.addedAt),
  );
}

function headingOf(flight: BookFlight, by: GroupName): string {
  const pilot = pilotOf(flight) ?? 'pilot unknown';
  const vehicle = vehicleOf(flight) ?? 'vehicle unknown';
  if (by === 'none') return '';
  if (by === 'both') return `${pilot} · ${vehicle}`;
  return by === 'pilot' ? pilot : vehicle;
}

/** Groups in the order of their names, the order within them kept. */
export function groupFlights(flights: readonly BookFlight[], by: GroupName): readonly FlightGroup[] {
  const groups = new Map<string, BookFlight[]>();
  for (const flight of flights) {
    const heading = headingOf(flight, by);
    const members = groups.get(heading);
    if (members === undefined) groups.set(heading, [flight]);
    else members.push(flight);
  }
  const unknown = (heading: string) => Number(/(pilot|vehicle) unknown/.test(heading));
  return [...groups]
    .sort(([a], [b]) => unknown(a) - unknown(b) || order.compare(a, b))
    .map(([heading, members]) => ({ heading, flights: members }));
}

/** `late, windy` as typed → tags: trimmed, without repetition. */
export function readTags(text: string): string[] {
  const tags = text
    .split(/[,;\n]/)
    .map((t) => t.trim().replace(/\s+/g, ' '))
    .filter((t) => t !== '');
  return [...new Map(tags.map((t) => [plain(t), t])).values()];
}
