import { computed, signal } from '@preact/signals';
import type { RememberedColumns } from '../protocol.ts';
import { databaseShelf } from './databaseShelf.ts';
import { memoryShelf } from './memoryShelf.ts';
import { sameContent } from './sameContent.ts';
import type { Shelf } from './shelf.ts';
import { joinTabs } from './tabs.ts';
import type { BookFlight, FlightChanges } from './types.ts';

/** Deleted flights that are older than this are taken out for good when the page starts. */
const undoTime_ms = 10 * 60_000;

const all = signal<readonly BookFlight[]>([]);
const unsavedIds = signal<ReadonlySet<string>>(new Set());

/** The flights of the book, without deleted ones. */
export const bookFlights = computed(() => all.value.filter((f) => f.deletedAt === null));
/** Ids of flights that last only until the page is closed. */
export const unsaved = computed(() => unsavedIds.value);
export const rememberedColumns = signal<readonly RememberedColumns[]>([]);
/** Why the book, or part of it, does not last; null while all is well. */
export const bookTrouble = signal<string | null>(null);
/** The flight deleted last, while that can be undone. */
export const deletedLast = signal<BookFlight | null>(null);

let disk: Shelf | null = null;
/** What the disk held when it was read last: still shown when it can no longer be read. */
let lasting: readonly BookFlight[] = [];
const memory = memoryShelf();
const tabs = joinTabs(() => void refresh());

const forbidden =
  'This browser does not let the page store anything (a private window, or a setting), so the logbook lasts until this page is closed. Export it to keep it.';
const takenOver =
  'Another tab has a newer lossbook and took the logbook over. Reload this page; until then nothing new is saved.';
const heldBack =
  'Another tab has an older lossbook and holds the logbook in its old form. Close that tab; the logbook opens here by itself.';

function fullFor(what: string): string {
  return `The space that the browser gives this page is full, or could not be written: ${what} lasts until this page is closed. Export the logbook, or delete flights from it.`;
}

let isFull = false;

/** Says that the disk is full, or no longer; a book that is closed altogether is the greater trouble. */
function trouble(text: string | null): void {
  if (bookTrouble.peek() !== null && !isFull) return;
  isFull = text !== null;
  bookTrouble.value = text;
}

/** Reads the book as it stands; what the disk could not take goes before what it has. */
async function refresh(): Promise<void> {
  const volatile = await memory.flights();
  const hidden = new Set(volatile.map((f) => f.id));
  lasting = (await disk?.flights().catch(() => lasting)) ?? [];
  all.value = [...volatile, ...lasting.filter((f) => !hidden.has(f.id))];
  const deleted = deletedLast.peek();
  // It came back: undone in another tab, or brought back with an exported logbook. Nothing is to be made final any more.
  if (deleted !== null && bookFlights.peek().some((f) => f.id === deleted.id)) deletedLast.value = null;
  unsavedIds.value = disk === null ? new Set(all.value.map((f) => f.id)) : hidden;
  rememberedColumns.value = [...(await memory.columns()), ...((await disk?.columns().catch(() => [])) ?? [])];
}

/** Opens the book; called once. Never throws: without storage the page goes on in memory and says so. */
export async function openBook(): Promise<void> {
  try {
    disk = await databaseShelf({
      onHeldBack: () => {
        bookTrouble.value = heldBack;
      },
      onLost: () => {
        bookTrouble.value = takenOver;
      },
    });
    if (bookTrouble.peek() === heldBack) bookTrouble.value = null;
    await settle(disk);
  } catch (error) {
    disk = null;
    bookTrouble.value =
      error instanceof DOMException && error.name === 'VersionError' ? takenOver : forbidden;
  }
  await refresh();
}

/** Takes long deleted flights out, offers the undo of a late deletion, moves in what came before the disk was open. */
async function settle(shelf: Shelf): Promise<void> {
  const limit = new Date(Date.now() - undoTime_ms).toISOString();
  const deleted = (await shelf.flights()).filter((f) => f.deletedAt !== null);
  const [gone, late] = [true, false].map((old) => deleted.filter((f) => (f.deletedAt ?? '') < limit === old));
  if (gone?.length) await shelf.erase(gone.map((f) => f.id));
  deletedLast.value =
    late?.sort((a, b) => (a.deletedAt ?? '').localeCompare(b.deletedAt ?? '')).at(-1) ?? null;
  for (const flight of await memory.flights()) {
    const log = await memory.log(flight.id);
    if (log !== null) await keepFlight(flight, log);
  }
}

/** Keeps a flight: on disk, or in memory where that fails, which is said. */
export async function keepFlight(flight: BookFlight, log: Blob): Promise<void> {
  try {
    if (disk === null) await memory.put(flight, log);
    else {
      await disk.put(flight, log);
      await memory.erase([flight.id]);
      if ((await memory.flights()).length === 0 && isFull) trouble(null);
      // Asks the browser not to clear the book when space runs short; it may refuse.
      void navigator.storage?.persist?.().catch(() => false);
    }
  } catch {
    await memory.put(flight, log);
    trouble(fullFor(flight.title));
  }
  await refresh();
  tabs.tell();
}

/** Changes a flight; false when it is no longer there (deleted for good in another tab). */
export async function changeFlight(id: string, changes: FlightChanges): Promise<boolean> {
  const dated = { changedAt: new Date().toISOString(), ...changes };
  let changed = await memory.change(id, dated);
  if (changed === null && disk !== null) {
    try {
      changed = await disk.change(id, dated);
    } catch {
      changed = await changeInMemory(id, dated);
    }
  }
  await refresh();
  tabs.tell();
  return changed !== null;
}

async function changeInMemory(id: string, changes: FlightChanges): Promise<BookFlight | null> {
  const flight = all.peek().find((f) => f.id === id);
  const log = await disk?.log(id).catch(() => null);
  if (flight === undefined || !log) return null;
  await memory.put({ ...flight, ...changes }, log);
  trouble(fullFor(`the change to ${flight.title}`));
  return flight;
}

/** The bytes of a flight's log; null when they are no longer there. */
export async function logOfFlight(id: string): Promise<Blob | null> {
  return (await memory.log(id)) ?? (await disk?.log(id).catch(() => null)) ?? null;
}

/** Deletes a flight; until the next deletion, or `forgetDeleted`, it can be had back. */
export async function deleteFlight(flight: BookFlight): Promise<void> {
  await forgetDeleted();
  await changeFlight(flight.id, { deletedAt: new Date().toISOString(), changedAt: flight.changedAt });
  deletedLast.value = flight;
}

/** Takes the last deletion back. */
export async function undoDelete(): Promise<void> {
  const flight = deletedLast.peek();
  if (flight === null) return;
  deletedLast.value = null;
  await changeFlight(flight.id, { deletedAt: null, changedAt: flight.changedAt });
}

/** Makes the last deletion final. */
export async function forgetDeleted(): Promise<void> {
  const flight = deletedLast.peek();
  if (flight === null) return;
  await Promise.all([memory.erase([flight.id]), disk?.erase([flight.id]).catch(() => {})]);
  deletedLast.value = null;
  await refresh();
  tabs.tell();
}

/** Remembers how columns are read in logs with these headers; no choices forgets them. */
export async function rememberColumns(remembered: RememberedColumns): Promise<void> {
  try {
    await (disk ?? memory).rememberColumns(remembered);
  } catch {
    await memory.rememberColumns(remembered);
    trouble(fullFor('this choice of columns'));
  }
  await refresh();
  tabs.tell();
}

/** The flight of the book that has this very log; null when there is none. */
export async function flightWithLog(name: string, log: Blob): Promise<BookFlight | null> {
  for (const flight of bookFlights.peek()) {
    if (flight.logName !== name || flight.logBytes !== log.size) continue;
    const kept = await logOfFlight(flight.id);
    if (kept !== null && (await sameContent(kept, log))) return flight;
  }
  return null;
}
