import { signal } from '@preact/signals';
import type { CompareOptions } from '../../attempts/compare.ts';
import { distinctNames } from '../../attempts/distinctNames.ts';
import { planAttemptOf } from '../../attempts/planAttempt.ts';
import { stitchGroups, stitchNames } from '../../attempts/stitchGroups.ts';
import type { Attempt, Comparison, GroupBy, Stitched } from '../../attempts/types.ts';
import { type Analyst, askWhile, createAnalyst, TaskFailed } from '../analyst.ts';
import { bookFlights, rememberedColumns } from '../book/book.ts';
import { failureOf } from '../failure.ts';
import type { FlightSource } from '../flightSources.ts';
import type { Failure, PageReviewRequest } from '../protocol.ts';
import { reviewRequest } from '../reviewRequest.ts';
import { current, flights } from '../state.ts';

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

/** A flight of the logbook changes with its card, and any with what is remembered of columns. */
function stampOf(source: FlightSource): string {
  const kept = bookFlights.peek().find((f) => `book:${f.id}` === source.id);
  const columns = JSON.stringify(rememberedColumns.peek());
  return `${source.id} ${kept?.part ?? ''} ${kept?.card?.text ?? ''} ${columns}`;
}

/** Ends the work; what stands on the screen stays. */
export function stopComparing(): void {
  turn += 1;
  analyst?.stop();
  comparing.value = null;
}

async function attemptFor(source: FlightSource, ask: Analyst['ask']): Promise<Attempt> {
  const stamp = stampOf(source);
  const known = made.get(stamp);
  if (known !== undefined) return known;
  const files = await source.load();
  // The plan would be flown for each: what is compared here does not need it.
  const found = await ask('attempt', reviewRequest(stamp, { ...files, plan: null }));
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

/** Name under which the best ascent of the first flight's rocket can be the reference. */
export const bestReference = 'best';
/** Best ascents found so far, by the mission card's text. */
const bestFound = new Map<string, Attempt>();

/** The best ascent of the first of these flights that has a mission card. */
async function bestOf(sources: readonly FlightSource[], ask: Analyst['ask']): Promise<Attempt | null> {
  for (const source of sources) {
    const files = await source.load();
    if (files.card === null) continue;
    const known = bestFound.get(files.card.text);
    if (known !== undefined) return known;
    const request = reviewRequest(stampOf(source), { ...files, plan: null });
    const found = await ask('bestAttempt', request, (text) => {
      const now = comparing.peek();
      if (now !== null) comparing.value = { ...now, text };
    });
    bestFound.set(files.card.text, found);
    return found;
  }
  return null;
}

/** What the attempts are held against: one of them, another flight, a plan, the best ascent; else the greatest margin. */
async function referenceOf(
  wanted: string | null,
  sources: readonly FlightSource[],
  names: readonly string[],
  ask: Analyst['ask'],
): Promise<Pick<CompareOptions, 'reference'>> {
  if (wanted === null) return {};
  if (wanted === planReference) {
    const open = current.peek();
    const plan = open === null ? null : planAttemptOf(open.analysis.review, open.analysis.planStrips ?? null);
    return plan === null ? {} : { reference: plan };
  }
  if (wanted === bestReference) {
    const best = await bestOf(sources, ask);
    return best === null ? {} : { reference: best };
  }
  const name = names[sources.findIndex((s) => s.id === wanted)];
  if (name !== undefined) return { reference: name };
  const other = flights.peek().find((s) => s.id === wanted);
  return other === undefined ? {} : { reference: named(await attemptFor(other, ask), other, other.title) };
}

/** The best phases of each group put together and flown: their logs are read again. */
async function stitch(
  { groups, rows }: Comparison,
  sourceOf: ReadonlyMap<string, FlightSource>,
  ask: Analyst['ask'],
): Promise<readonly Stitched[]> {
  const flights = new Map<string, PageReviewRequest>();
  for (const name of new Set(stitchGroups({ groups, rows }).flatMap(stitchNames))) {
    const source = sourceOf.get(name);
    if (source !== undefined)
      flights.set(name, reviewRequest(stampOf(source), { ...(await source.load()), plan: null }));
  }
  return flights.size === 0 ? [] : ask('stitch', { groups, rows, flights });
}

/**
 * Reviews flights one by one and sets them side by side.
 * @param reference id of a flight, `plan`, `best`, or null for the greatest margin
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
  const ask = askWhile(analyst, stands);
  const reviewed: { readonly source: FlightSource; readonly attempt: Attempt }[] = [];
  const failed: (typeof notCompared.value)[number][] = [];
  for (const [done, source] of sources.entries()) {
    comparing.value = { done, total: sources.length, text: source.title };
    try {
      reviewed.push({ source, attempt: await attemptFor(source, ask) });
    } catch (error) {
      const failure = error instanceof TaskFailed ? error.failure : failureOf(error, { file: source.title });
      failed.push({ title: source.title, failure });
    }
    if (!stands()) return;
  }
  comparing.value = { done: sources.length, total: sources.length, text: 'setting them side by side' };
  const names = distinctNames(reviewed.map((r) => r.source.title));
  const used = reviewed.map((r) => r.source);
  const attempts = reviewed.map((r, i) => named(r.attempt, r.source, names[i] ?? r.source.title));
  const shown = (comparison: Comparison) => {
    compared.value = { comparison, ids: sources.map((s) => s.id), key: comparisonKey(by, reference) };
  };
  try {
    const options: CompareOptions = { by, ...(await referenceOf(reference, used, names, ask)) };
    const comparison = attempts.length === 0 ? null : await ask('compare', { attempts, options });
    if (!stands()) return;
    notCompared.value = failed;
    if (comparison === null) {
      compared.value = null;
      return;
    }
    shown(comparison);
    comparing.value = { done: sources.length, total: sources.length, text: 'flying the best phases again' };
    const sourceOf = new Map(used.map((source, i) => [names[i] ?? source.title, source]));
    const stitched = await stitch(comparison, sourceOf, ask);
    if (stands()) shown({ ...comparison, stitched });
  } catch (error) {
    if (!stands()) return;
    const failure = error instanceof TaskFailed ? error.failure : failureOf(error);
    notCompared.value = [...failed, { title: comparing.peek()?.text ?? 'the comparison', failure }];
  } finally {
    if (stands()) comparing.value = null;
  }
}
