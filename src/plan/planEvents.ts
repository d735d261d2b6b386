import { LossbookError, type Where } from '../errors.ts';
import type { Assigned } from '../log/assign.ts';
import { suggestion } from '../suggest.ts';
import type { PlanEvent } from './types.ts';

/** Names that a plan's events can have. */
export const planEventNames: readonly string[] = [
  'ignition',
  'lift-off',
  'pitch-over',
  'mach-1',
  'max-q',
  'throttle-down',
  'throttle-up',
  'cutoff',
  'separation',
  'booster-separation',
  'jettison',
  'apoapsis',
  'air-exit',
];

/**
 * The events of a table's event column, at their rows, and of a JSON document's own list `events`
 * (`{ "name", "time_s" }`, or `at` in the unit of the axis). A cell may hold several, parted by `;`, each with its stage in
 * brackets: `cutoff (booster); separation (booster)`.
 * @returns the events in their order, and `plan-unknown-event`, with a suggestion, for each name that is none
 */
export function planEvents(
  column: Assigned | undefined,
  rows: readonly number[],
  along: Float64Array,
  document: unknown,
  file: string,
): { readonly events: PlanEvent[]; readonly unknown: readonly LossbookError[] } {
  const events: PlanEvent[] = [];
  const unknown: LossbookError[] = [];
  const take = (text: string, at: number, subject: string | null, where: Where) => {
    try {
      const named = namedEvent(text, where);
      events.push({ ...named, subject: subject ?? named.subject, at });
    } catch (error) {
      if (!(error instanceof LossbookError)) throw error;
      unknown.push(error);
    }
  };
  for (const row of rows) {
    const text = column?.column.texts.get(row);
    if (text === undefined) continue;
    for (const part of text.split(';')) {
      if (part.trim() === '') continue;
      const where = { file, row: row + 1, ...(column === undefined ? {} : { column: column.column.header }) };
      take(part, along[row]!, null, where);
    }
  }
  for (const entry of listOf(document)) {
    const name = entry.name ?? entry.event;
    const at = entry.time_s ?? entry.at;
    if (typeof name !== 'string' || typeof at !== 'number') continue;
    take(name, at, typeof entry.subject === 'string' ? entry.subject : null, { file });
  }
  return { events: events.sort((a, b) => a.at - b.at), unknown };
}

/** True for the name, with or without a subject in brackets, of an event that plans have. */
export function isPlanEvent(text: string): boolean {
  return planEventNames.includes(text.replace(/\s*\(.*$/u, '').trim());
}

/** Reads `cutoff (booster)`. */
export function namedEvent(text: string, where: Where): Omit<PlanEvent, 'at'> {
  const parts = /^\s*([^(]+?)\s*(?:\(([^)]*)\))?\s*$/u.exec(text);
  const name = (parts?.[1] ?? text)
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/gu, '-');
  const plain = name === 'liftoff' ? 'lift-off' : name;
  if (!planEventNames.includes(plain))
    throw new LossbookError(
      'plan-unknown-event',
      {
        event: text.trim(),
        suggestion: suggestion(plain, planEventNames),
        events: planEventNames.join(', '),
      },
      where,
    );
  return { name: plain, subject: parts?.[2]?.trim() || null };
}

function listOf(document: unknown): Record<string, unknown>[] {
  if (typeof document !== 'object' || document === null || Array.isArray(document)) return [];
  const { events } = document as { readonly events?: unknown };
  return Array.isArray(events)
    ? events.filter((e): e is Record<string, unknown> => typeof e === 'object' && e !== null)
    : [];
}
