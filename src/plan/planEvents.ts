import { LossbookError } from '../errors.ts';
import type { Assigned } from '../log/assign.ts';
import { suggestion } from '../suggest.ts';
import type { PlanEvent } from './types.ts';

/** Names that a plan's events can have. */
const names = [
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
 * @throws LossbookError `plan-unknown-event`, with a suggestion
 */
export function planEvents(
  column: Assigned | undefined,
  rows: readonly number[],
  along: Float64Array,
  document: unknown,
  file: string,
): PlanEvent[] {
  const events: PlanEvent[] = [];
  for (const row of rows) {
    const text = column?.column.texts.get(row);
    if (text === undefined) continue;
    for (const part of text.split(';')) {
      if (part.trim() === '') continue;
      events.push({ ...namedEvent(part, { file, row: row + 1 }), at: along[row]! });
    }
  }
  for (const entry of listOf(document)) {
    const name = entry.name ?? entry.event;
    const at = entry.time_s ?? entry.at;
    if (typeof name !== 'string' || typeof at !== 'number') continue;
    const named = namedEvent(name, { file });
    events.push({ ...named, subject: typeof entry.subject === 'string' ? entry.subject : named.subject, at });
  }
  return events.sort((a, b) => a.at - b.at);
}

/** True for the name, with or without a subject in brackets, of an event that plans have. */
export function isPlanEvent(text: string): boolean {
  return names.includes(text.replace(/\s*\(.*$/u, '').trim());
}

/** Reads `cutoff (booster)`. */
export function namedEvent(
  text: string,
  where: { readonly file: string; readonly row?: number },
): Omit<PlanEvent, 'at'> {
  const parts = /^\s*([^(]+?)\s*(?:\(([^)]*)\))?\s*$/u.exec(text);
  const name = (parts?.[1] ?? text)
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/gu, '-');
  const plain = name === 'liftoff' ? 'lift-off' : name;
  if (!names.includes(plain))
    throw new LossbookError(
      'plan-unknown-event',
      { event: text.trim(), suggestion: suggestion(plain, names), events: names.join(', ') },
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
