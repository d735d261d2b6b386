import type { BookFlight, FlightSummary } from '../../../src/app/book/types.ts';

/** A flight of the book with what a test does not care about filled in. */
export function someFlight({
  summary = {},
  ...rest
}: Partial<Omit<BookFlight, 'summary'>> & { summary?: Partial<FlightSummary> } = {}): BookFlight {
  return {
    id: 'a',
    title: 'evening',
    logName: 'evening.csv',
    logBytes: 3,
    card: null,
    plan: null,
    part: 1,
    pilot: null,
    vehicle: null,
    tags: [],
    notes: '',
    addedAt: '2031-05-17T12:00:00.000Z',
    changedAt: '2031-05-17T12:00:00.000Z',
    deletedAt: null,
    ...rest,
    summary: {
      verdictCode: 'in-orbit',
      verdict: 'In orbit.',
      margin_m_s: 9,
      mission: null,
      world: 'Osselby',
      vehicle: null,
      pilot: null,
      attempt: null,
      date: null,
      ...summary,
    },
  };
}
