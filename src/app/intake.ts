import { signal } from '@preact/signals';
import { LossbookError } from '../errors.ts';
import { type Analyst, askWhile, createAnalyst, TaskFailed } from './analyst.ts';
import { changeFlight, flightWithLog, keepFlight } from './book/book.ts';
import { newId } from './book/newId.ts';
import { summaryOf } from './book/summary.ts';
import type { BookFlight, TextFile } from './book/types.ts';
import { failureOf } from './failure.ts';
import type { FlightFiles } from './flightSources.ts';
import { pairFiles } from './pairFiles.ts';
import type { Failure, ReviewResult } from './protocol.ts';
import { reviewRequest } from './reviewRequest.ts';

/** A flight that came in, with its review. */
export interface Arrived {
  readonly flight: BookFlight;
  readonly result: ReviewResult;
  /** True where the book already had this log. */
  readonly known: boolean;
}

/** Files that are being taken into the book one by one. */
export interface Intake {
  readonly done: number;
  readonly total: number;
  /** The one that is being read and reviewed. */
  readonly name: string;
  readonly text: string;
  /** How far that one has come, 0 to 1, where it is known. */
  readonly share: number | null;
}

/** null while none are. */
export const intake = signal<Intake | null>(null);

/**
 * Reviews a flight and keeps it. A log that the book already has is not kept twice: a card or plan given with it
 * takes the place of the one kept.
 * @throws TaskFailed when it cannot be reviewed; then nothing is kept
 */
export async function takeIn(
  files: FlightFiles,
  analyst: Pick<Analyst, 'ask'>,
  say: (text: string, share: number | null) => void,
): Promise<Arrived> {
  const { log } = files;
  const twin = await flightWithLog(log.name, log.blob);
  const id = twin?.id ?? newId();
  const card = files.card ?? twin?.card ?? null;
  const plan = files.plan ?? twin?.plan ?? null;
  const part = twin?.part ?? files.part;
  const result = await analyst.ask('review', reviewRequest(id, { log, card, plan, part }), say);
  const summary = summaryOf(result.analysis.review);
  if (twin !== null) {
    await changeFlight(id, { card, plan, summary });
    return { flight: { ...twin, card, plan, summary }, result, known: true };
  }
  const now = new Date().toISOString();
  const flight: BookFlight = {
    id,
    title: log.name.replace(/\.gz$/i, '').replace(/\.[^.]*$/, '') || log.name,
    logName: log.name,
    logBytes: log.blob.size,
    card,
    plan,
    part,
    pilot: null,
    vehicle: null,
    tags: [],
    notes: '',
    summary,
    addedAt: now,
    changedAt: now,
    deletedAt: null,
  };
  await keepFlight(flight, log.blob);
  return { flight, result, known: false };
}

const smallText_bytes = 1e6;

/** What files given together are, by their names and, for small JSON, by their content. */
async function sortFiles(files: readonly File[], analyst: Pick<Analyst, 'ask'>) {
  const cards = new Set<File>();
  for (const file of files) {
    if (!/\.json$/i.test(file.name) || /\.(mission|plan)\.json$/i.test(file.name)) continue;
    if (file.size > smallText_bytes) continue;
    const kind = await analyst.ask('kind', { name: file.name, blob: file }).catch(() => 'unknown');
    if (kind === 'card') cards.add(file);
  }
  return pairFiles(files, (file) => cards.has(file));
}

/**
 * The text of a small file, unpacked where its name says that it is packed.
 * @throws LossbookError `file-unreadable` where it is not packed as its name says, or can no longer be read
 */
export async function textOf(file: File): Promise<TextFile> {
  const unreadable = (reason: string) =>
    new LossbookError('file-unreadable', { reason }, { file: file.name });
  if (!/\.gz$/i.test(file.name)) {
    const text = await file.text().catch(() => {
      throw unreadable('the browser could not read it (is it a folder, or was it moved?)');
    });
    return { name: file.name, text };
  }
  const unpacked = file.stream().pipeThrough(new DecompressionStream('gzip'));
  try {
    return { name: file.name.replace(/\.gz$/i, ''), text: await new Response(unpacked).text() };
  } catch {
    throw unreadable('it is no gzip file');
  }
}

export interface TakenIn {
  readonly arrived: readonly Arrived[];
  /** Files that could not be taken, each with the reason. */
  readonly leftAside: readonly { readonly name: string; readonly failure: Failure }[];
  readonly loneCards: readonly File[];
  readonly lonePlans: readonly File[];
  /** The worker that did it; it still knows the log that it read last. */
  readonly analyst: Analyst;
}

let running: { readonly stop: () => void } | null = null;

/** Ends taking files in: what is in the book stays, the rest is not begun. */
export function stopIntake(): void {
  running?.stop();
}

/**
 * Takes files into the book one by one, each flight whole before the next is begun. Asking anew ends a run that is
 * not done.
 * @returns null when it was stopped; else the caller ends the worker, or has more use for it
 */
export async function takeInAll(files: readonly File[]): Promise<TakenIn | null> {
  stopIntake();
  const analyst = createAnalyst();
  let stop: () => void = () => {};
  const stopped = new Promise<null>((resolve) => {
    stop = () => resolve(null);
  });
  const mine = {
    stop: () => {
      if (running === mine) running = null;
      intake.value = null;
      stop();
    },
  };
  running = mine;
  // A run that was stopped while the page itself read a file would start the worker anew, and keep the flight.
  const asking = { ask: askWhile(analyst, () => running === mine) };
  const work = async (): Promise<TakenIn> => {
    const { flights, loneCards, lonePlans } = await sortFiles(files, asking);
    const arrived: Arrived[] = [];
    const leftAside: TakenIn['leftAside'][number][] = [];
    for (const [done, { log, card, plan }] of flights.entries()) {
      if (running !== mine) break;
      const say = (text: string, share: number | null) => {
        if (running === mine) intake.value = { done, total: flights.length, name: log.name, text, share };
      };
      say('reading the log', null);
      try {
        const texts = await Promise.all([card, plan].map((f) => (f === null ? null : textOf(f))));
        arrived.push(
          await takeIn(
            { log: { name: log.name, blob: log }, card: texts[0] ?? null, plan: texts[1] ?? null, part: 1 },
            asking,
            say,
          ),
        );
      } catch (error) {
        const failure = error instanceof TaskFailed ? error.failure : failureOf(error, { file: log.name });
        leftAside.push({ name: log.name, failure });
      }
    }
    return { arrived, leftAside, loneCards, lonePlans, analyst };
  };
  const outcome = await Promise.race([work(), stopped]);
  if (outcome === null) analyst.stop();
  if (running === mine) {
    running = null;
    intake.value = null;
  }
  return outcome;
}
