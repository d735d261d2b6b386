import { type IDBPTransaction, openDB } from 'idb';
import { headersKey } from '../headersKey.ts';
import { type BookSchema, migrate, schemaVersion } from './schema.ts';
import type { Shelf } from './shelf.ts';

const name = 'lossbook';

/** What the database tells of other tabs. */
export interface DatabaseNews {
  /** A tab with an earlier lossbook keeps the book open in its old form. */
  readonly onHeldBack: () => void;
  /** A tab with a later lossbook took the book over, or the browser closed it: nothing can be kept any more. */
  readonly onLost: () => void;
}

/**
 * The book in this browser's own database.
 * @throws whatever the browser throws where it forbids storage, or holds a book of a later version
 */
export async function databaseShelf({ onHeldBack, onLost }: DatabaseNews): Promise<Shelf> {
  const database = await openDB<BookSchema>(name, schemaVersion, {
    upgrade: (db, from, _to, upgrade) => {
      // A failed step must end the upgrade: half a migration is none.
      void migrate(db, from, upgrade).catch(() => upgrade.abort());
    },
    blocked: onHeldBack,
    blocking: () => {
      database.close();
      onLost();
    },
    terminated: onLost,
  });

  type Store = 'flights' | 'logs' | 'columns';
  /** One transaction; written through to the disk before it counts as done. */
  async function write<T>(
    stores: Store[],
    work: (change: IDBPTransaction<BookSchema, Store[], 'readwrite'>) => Promise<T>,
  ): Promise<T> {
    const change = database.transaction(stores, 'readwrite', { durability: 'strict' });
    // The transaction's own end says whether it counts; the request that failed in it says less.
    const [outcome] = await Promise.all([work(change), change.done]);
    return outcome;
  }

  return {
    flights: () => database.getAll('flights'),
    log: async (id) => (await database.get('logs', id)) ?? null,
    put: (flight, log) =>
      write(['flights', 'logs'], async (change) => {
        await Promise.all([
          change.objectStore('flights').put(flight),
          change.objectStore('logs').put(log, flight.id),
        ]);
      }),
    change: (id, changes) =>
      write(['flights'], async (change) => {
        const store = change.objectStore('flights');
        const found = await store.get(id);
        if (found === undefined) return null;
        const flight = { ...found, ...changes };
        await store.put(flight);
        return flight;
      }),
    erase: (ids) =>
      write(['flights', 'logs'], async (change) => {
        await Promise.all(
          ids.flatMap((id) => [
            change.objectStore('flights').delete(id),
            change.objectStore('logs').delete(id),
          ]),
        );
      }),
    columns: () => database.getAll('columns'),
    rememberColumns: (remembered) =>
      write(['columns'], async (change) => {
        const store = change.objectStore('columns');
        const key = headersKey(remembered.headers);
        if (remembered.choices.length === 0) await store.delete(key);
        else await store.put(remembered, key);
      }),
  };
}
