import type { RememberedColumns } from '../protocol.ts';
import type { BookFlight, FlightChanges } from './types.ts';

/** Where flights are kept. Each call is whole or did not happen. */
export interface Shelf {
  /** All flights, deleted ones too, in no order. */
  flights(): Promise<readonly BookFlight[]>;
  /** The bytes of a flight's log; null when the flight is not here. */
  log(id: string): Promise<Blob | null>;
  /** Adds a flight with its log, or takes the place of the one with its id. */
  put(flight: BookFlight, log: Blob): Promise<void>;
  /** Changes a flight as it stands now, whoever changed it last; null when it is not here. */
  change(id: string, changes: FlightChanges): Promise<BookFlight | null>;
  /** Takes flights out for good. */
  erase(ids: readonly string[]): Promise<void>;
  columns(): Promise<readonly RememberedColumns[]>;
  /** Remembers choices for logs with these headers; no choices forgets them. */
  rememberColumns(remembered: RememberedColumns): Promise<void>;
}
