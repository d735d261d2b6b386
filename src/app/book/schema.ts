import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { RememberedColumns } from '../protocol.ts';
import type { BookFlight } from './types.ts';

/** The book as the browser keeps it. */
export interface BookSchema extends DBSchema {
  readonly flights: { key: string; value: BookFlight };
  /** Bytes of the logs by flight: apart, so that the list is read without them. */
  readonly logs: { key: string; value: Blob };
  /** Column choices by `headersKey`. */
  readonly columns: { key: string; value: RememberedColumns };
}

export type BookDatabase = IDBPDatabase<BookSchema>;
type Upgrade = IDBPTransaction<BookSchema, StoreNames<BookSchema>[], 'versionchange'>;

/**
 * Each step lifts a book from the version of its place in the list to the next. A step that was released is never
 * changed; a new shape of the book is a new step.
 */
const steps: readonly ((database: BookDatabase, upgrade: Upgrade) => Promise<void>)[] = [
  async (database) => {
    database.createObjectStore('flights', { keyPath: 'id' });
    database.createObjectStore('logs');
  },
  // Column choices; plans, parts and tags of a flight.
  async (database, upgrade) => {
    database.createObjectStore('columns');
    const store = upgrade.objectStore('flights');
    for (let at = await store.openCursor(); at !== null; at = await at.continue()) {
      await at.update({ plan: null, part: 1, tags: [], ...(at.value as Partial<BookFlight>) } as BookFlight);
    }
  },
];

export const schemaVersion = steps.length;

/** Lifts a book of any earlier version to the present one, inside the transaction that the browser opens for it. */
export async function migrate(database: BookDatabase, from: number, upgrade: Upgrade): Promise<void> {
  for (const step of steps.slice(from)) await step(database, upgrade);
}
