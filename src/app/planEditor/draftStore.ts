import { signal } from '@preact/signals';
import type { TextFile } from '../book/types.ts';
import { browserStorage } from '../browserStorage.ts';
import { dropDraft, keepDraft, keptDraft } from '../keptDrafts.ts';

/** Why unsaved edits would not outlive the page; null while they do. */
export const storeTrouble = signal<string | null>(null);

const forbidden =
  'This browser does not keep unsaved edits for the page (a private window, a setting, or no space left): they are lost when it is reloaded. Save the plan as a file to keep it.';

/** The plan that this browser kept unsaved for a flight and its log; null for none. */
export function keptPlan(flightId: string, log: string): TextFile | null {
  const store = browserStorage();
  const draft = store && keptDraft(store, 'plan', flightId, log);
  return draft?.name === undefined ? null : { name: draft.name, text: draft.text };
}

/** Keeps a plan until it is applied or taken back, whatever becomes of the tab; null forgets it. */
export function keepPlan(flightId: string, log: string, plan: TextFile | null): void {
  const store = browserStorage();
  if (plan === null) {
    if (store !== null) dropDraft(store, 'plan', flightId);
    return;
  }
  const kept = store !== null && keepDraft(store, 'plan', flightId, { log, ...plan, at: Date.now() });
  storeTrouble.value = kept ? null : forbidden;
}
