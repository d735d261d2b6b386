/** A card or plan that was edited and not yet applied, kept in this browser until it is applied or taken back. */
export interface KeptDraft {
  /** Name of the log that it is for; empty for one from scratch. */
  readonly log: string;
  readonly text: string;
  /** Name of its own, where it may be given another. */
  readonly name?: string;
  /** When it was written last, ms since 1970. */
  readonly at: number;
}

/** The part of the browser's storage that drafts are kept in. */
export type DraftStore = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** What a draft is of. */
export type DraftKind = 'card' | 'plan';

const prefixOf = (kind: DraftKind): string => `lossbook-${kind}:`;
/** Drafts of flights that nobody comes back to give way to newer ones of their kind. */
const most = 20;

function read(store: DraftStore, key: string): KeptDraft | null {
  try {
    const draft = JSON.parse(store.getItem(key) ?? 'null') as Partial<KeptDraft> | null;
    if (typeof draft?.text !== 'string' || typeof draft.log !== 'string') return null;
    const at = typeof draft.at === 'number' ? draft.at : 0;
    const name = typeof draft.name === 'string' ? { name: draft.name } : {};
    return { log: draft.log, text: draft.text, at, ...name };
  } catch {
    return null;
  }
}

/** The draft for a flight; null where there is none, or where it was written for another log. */
export function keptDraft(
  store: DraftStore,
  kind: DraftKind,
  flightId: string,
  log: string,
): KeptDraft | null {
  const draft = read(store, prefixOf(kind) + flightId);
  return draft?.log === log ? draft : null;
}

/**
 * Keeps a draft in place of the flight's earlier one.
 * @returns false where the storage is full or forbidden: the edit stands until the page is closed
 */
export function keepDraft(store: DraftStore, kind: DraftKind, flightId: string, draft: KeptDraft): boolean {
  const prefix = prefixOf(kind);
  try {
    store.setItem(prefix + flightId, JSON.stringify(draft));
    const keys = Array.from({ length: store.length }, (_, i) => store.key(i) ?? '');
    const drafts = keys
      .filter((key) => key.startsWith(prefix))
      .map((key) => ({ key, at: read(store, key)?.at ?? 0 }));
    for (const { key } of drafts.sort((a, b) => b.at - a.at).slice(most)) store.removeItem(key);
    return true;
  } catch {
    return false;
  }
}

export function dropDraft(store: DraftStore, kind: DraftKind, flightId: string): void {
  try {
    store.removeItem(prefixOf(kind) + flightId);
  } catch {
    // What was never kept need not be dropped.
  }
}
