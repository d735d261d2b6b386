import { signal } from '@preact/signals';
import type { TextFile } from '../book/types.ts';

const prefix = 'lossbook-plan-draft ';

/** Why unsaved edits would not outlive a reload; null while they do. */
export const storeTrouble = signal<string | null>(null);

const forbidden =
  'This browser does not keep unsaved edits for the page (a private window, a setting, or no space left): they are lost when it is reloaded. Save the plan as a file to keep it.';

function tried<T>(work: () => T): T | null {
  try {
    const done = work();
    storeTrouble.value = null;
    return done;
  } catch {
    storeTrouble.value = forbidden;
    return null;
  }
}

/** The draft that this tab kept for a flight; null for none. */
export function keptDraft(flightId: string): TextFile | null {
  const text = tried(() => sessionStorage.getItem(prefix + flightId));
  if (text === null) return null;
  try {
    const { name, text: table } = JSON.parse(text) as Partial<TextFile>;
    return typeof name === 'string' && typeof table === 'string' ? { name, text: table } : null;
  } catch {
    return null;
  }
}

/** Keeps a draft for as long as the tab lasts, reloads included; null forgets it. */
export function keepDraft(flightId: string, draft: TextFile | null): void {
  tried(() =>
    draft === null
      ? sessionStorage.removeItem(prefix + flightId)
      : sessionStorage.setItem(prefix + flightId, JSON.stringify(draft)),
  );
}
