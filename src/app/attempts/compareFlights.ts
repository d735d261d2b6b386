import { signal } from '@preact/signals';
import type { CompareOptions } from '../../attempts/compare.ts';
import { planAttemptOf } from '../../attempts/planAttempt.ts';
import type { Attempt, Comparison, GroupBy } from '../../attempts/types.ts';
import { type Analyst, createAnalyst, TaskFailed } from '../analyst.ts';
import { bookFlights } from '../book/book.ts';
import { failureOf } from '../failure.ts';
import type { FlightSource } from '../flightSources.ts';
import type { Failure } from '../protocol.ts';
import { reviewRequest } from '../reviewRequest.ts';
import { current } from '../state.ts';
import { distinctNames } from './choice.ts';

/** The comparison that stands on the screen, and the flights that it is of. */
export const compared = signal<{
  readonly comparison: Comparison;
  readonly ids: readonly string[];
  /** Grouping and reference that were asked for. */
  readonly key: string;
} | null>(null);

/** Says which grouping and reference a comparison is of. */
export function comparisonKey(by: GroupBy, reference: string | null): string {
  return `${by} ${reference ?? ''}`;
}
/** What is being done for it; null while nothing is. */
export const comparing = signal<{
  readonly done: number;
  readonly total: number;
  readonly text: string;
} | null>(null);
/** Flights that could not be reviewed, each with the reason. */
export const notCompared = signal<readonly { readonly title: string; readonly failure: Failure }[]>([]);

/** Attempts made so far, by flight and what it was reviewed with. */
const made = new Map<string, Attempt>();
let analyst: Analyst | null = null;
let turn = 0;

/** A flight of the logbook changes with its card; others stay what they are. */
function stampOf(source: FlightSource): string {
  const kept = bookFlights.peek().find((f) => `book:${f.id}` === source.id);
  return kept === undefined ? source.id : `${source.id} ${kept.part} ${kept.card?.text ?? ''}`;
}

/** Ends the work; what stands on the screen stays. */
export function stopComparing(): void {
  turn += 1;
  analyst?.stop();
  comparing.value = null;
}

async function attemptFor(source: FlightSource, worker: Analyst): Promise<Attempt> {
  const stamp = stampOf(source);
  const known = made.get(stamp);
  if (known !== undefined) return known;
  const files = await source.load();
  // The plan would be flown for each: what is compared here does not need it.
  const found = await worker.ask('attempt', reviewRequest(stamp, { ...files, plan: null }));
  made.set(stamp, found);
  return found;
}

/** In the reader's own words where they gave some. */
function named(attempt: Attempt, source: FlightSource, name: string): Attempt {
  const kept = bookFlights.peek().find((f) => `book:${f.id}` === source.id);
  return {
    ...attempt,
    name,
    pilot: kept?.pilot ?? attempt.pilot,
    vehicle: kept?.vehicle ?? attempt.vehicle,
  };
}

/** Name under which the plan of the flight that is shown can be the reference. */
export const planReference = 'plan';

function referenceOf(wanted: string | null, sources: readonly FlightSource[], names: readonly string[]) {
  if (wanted === planReference) {
    const open = current.peek();
    const plan = open === null ? null : planAttemptOf(open.analysis.review, open.analysis.planStrips ?? null);
    return plan === null ? {} : { reference: plan };
  }
  const name = names[sources.findIndex((s) => s.id === wanted)];
  return name === undefined ? {} : { reference: name };
}

/**
 * Reviews flights one by one and sets them side by side.
 * @param reference id of one of them, `plan`, or null for the greatest margin
 */
export async function compareFlights(
  sources: readonly FlightSource[],
  by: GroupBy,
  reference: string | null,
): Promise<void> {
  stopComparing();
  const mine = turn;
  const stands = () => mine === turn;
  analyst ??= createAnalyst();
  const worker = analyst;
  const reviewed: { readonly source: FlightSource; readonly attempt: Attempt }[] = [];
  const failed: (typeof notCompared.value)[number][] = [];
  for (const [done, source] of sources.entries()) {
    comparing.value = { done, total: sources.length, text: source.title };
    try {
      reviewed.push({ source, attempt: await attemptFor(source, worker) });
    } catch (error) {
      const failure = error instanceof TaskFailed ? error.failure : failureOf(error, { file: source.title });
      failed.push({ title: source.title, failure });
    }
    if (!stands()) return;
  }
  comparing.value = { done: sources.length, total: sources.length, text: 'setting them side by side' };
  const names = distinctNames(reviewed.map((r) => r.source.title));
  const used = reviewed.map((r) => r.source);
  const options: CompareOptions = { by, ...referenceOf(reference, used, names) };
  const attempts = reviewed.map((r, i) => named(r.attempt, r.source, names[i] ?? r.source.title));
  try {
    const comparison = attempts.length === 0 ? null : await worker.ask('compare', { attempts, options });
    if (!stands()) return;
    compared.value =
      comparison === null
        ? null
        : { comparison, ids: sources.map((s) => s.id), key: comparisonKey(by, reference) };
    notCompared.value = failed;
  } finally {
    if (stands()) comparing.value = null;
  }
}
