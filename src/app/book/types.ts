import type { VerdictCode } from '../../review/types.ts';

/** A small text file that is kept whole: a mission card, a plan. */
export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** What the list shows of a flight without working it out anew. */
export interface FlightSummary {
  readonly verdictCode: VerdictCode;
  readonly verdict: string;
  /** Margin at the end of the ascent, m/s; null where it is unavailable. */
  readonly margin_m_s: number | null;
  readonly mission: string | null;
  readonly world: string;
  readonly vehicle: string | null;
  readonly pilot: string | null;
  readonly attempt: number | null;
  readonly date: string | null;
}

/** A flight of the logbook. Its log's bytes are kept beside it, untouched. */
export interface BookFlight {
  readonly id: string;
  readonly title: string;
  readonly logName: string;
  readonly logBytes: number;
  readonly card: TextFile | null;
  readonly plan: TextFile | null;
  /** 1-based flight in a log that holds several. */
  readonly part: number;
  /** The reader's own words; null = as the mission card says. */
  readonly pilot: string | null;
  readonly vehicle: string | null;
  readonly tags: readonly string[];
  readonly notes: string;
  readonly summary: FlightSummary;
  /** Moments as ISO 8601 in UTC. */
  readonly addedAt: string;
  readonly changedAt: string;
  /** Deleted flights stay until the deletion can no longer be undone. */
  readonly deletedAt: string | null;
}

/** What can be changed in a flight of the book. */
export type FlightChanges = Partial<Omit<BookFlight, 'id' | 'addedAt' | 'logName' | 'logBytes'>>;

export function pilotOf(flight: BookFlight): string | null {
  return flight.pilot ?? flight.summary.pilot;
}

export function vehicleOf(flight: BookFlight): string | null {
  return flight.vehicle ?? flight.summary.vehicle;
}
