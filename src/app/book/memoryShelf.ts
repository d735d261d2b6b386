import { headersKey } from '../headersKey.ts';
import type { RememberedColumns } from '../protocol.ts';
import type { Shelf } from './shelf.ts';
import type { BookFlight } from './types.ts';

/** A shelf that lasts until the page is closed: for a browser that stores nothing, and for what no disk has room for. */
export function memoryShelf(): Shelf {
  const kept = new Map<string, { flight: BookFlight; log: Blob }>();
  const columns = new Map<string, RememberedColumns>();
  return {
    async flights() {
      return [...kept.values()].map((k) => k.flight);
    },
    async log(id) {
      return kept.get(id)?.log ?? null;
    },
    async put(flight, log) {
      kept.set(flight.id, { flight, log });
    },
    async change(id, changes) {
      const found = kept.get(id);
      if (found === undefined) return null;
      const flight = { ...found.flight, ...changes };
      kept.set(id, { flight, log: found.log });
      return flight;
    },
    async erase(ids) {
      for (const id of ids) kept.delete(id);
    },
    async columns() {
      return [...columns.values()];
    },
    async rememberColumns(remembered) {
      const key = headersKey(remembered.headers);
      if (remembered.choices.length === 0) columns.delete(key);
      else columns.set(key, remembered);
    },
  };
}
