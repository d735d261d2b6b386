import { computed, signal } from '@preact/signals';
import { LossbookError } from '../errors.ts';
import { sentence } from '../exchange/sentence.ts';
import type { ColumnSample } from '../log/columnSample.ts';
import type { ColumnChoice } from '../log/types.ts';
import type { Analysis } from '../review/types.ts';
import { adopt, ask, askWhile, stopAsking, TaskFailed } from './analyst.ts';
import { bookFlights, changeFlight, openBook, rememberColumns } from './book/book.ts';
import { looksLikeBook } from './book/looksLikeBook.ts';
import { summaryOf } from './book/summary.ts';
import type { TextFile } from './book/types.ts';
import { failureOf } from './failure.ts';
import {
  bookSource,
  type FlightFiles,
  type FlightSource,
  openedFlights,
  sampleFlights,
} from './flightSources.ts';
import { type Arrived, type TakenIn, takeIn, takeInAll, textOf } from './intake.ts';
import { followOffline } from './offline.ts';
import type { Failure, ReviewResult } from './protocol.ts';
import { reviewRequest } from './reviewRequest.ts';
import { go, route } from './route.ts';

/** The flight on the review screen. */
export interface OpenFlight {
  readonly source: FlightSource;
  readonly files: FlightFiles;
  readonly analysis: Analysis;
  /** Every header of the log's table, in its order. */
  readonly headers: readonly string[];
  /** The table's columns as they stand in the file. */
  readonly columns: readonly ColumnSample[];
  /** Column choices that the log was read with: the reader's own, or remembered ones. */
  readonly map: readonly ColumnChoice[];
}

const opened = signal<readonly FlightSource[]>([]);
const samples = signal<readonly FlightSource[]>([]);
/** Flights to choose from: opened on the command line, then those of the logbook, then samples. */
export const flights = computed<readonly FlightSource[]>(() => [
  ...opened.value,
  ...bookFlights.value.map(bookSource),
  ...samples.value,
]);
/** Stays what it was while another flight is worked on, and when that one fails. */
export const current = signal<OpenFlight | null>(null);
/** What is being worked on, for the reader to see. */
export const job = signal<{
  readonly title: string;
  readonly text: string;
  /** How far it has come, 0 to 1, where that is known. */
  readonly share: number | null;
} | null>(null);
export const problem = signal<Failure | null>(null);
/** Files of the last gift that could not be taken, each with the reason. */
export const leftAside = signal<TakenIn['leftAside']>([]);
/** Something worth knowing that is no error. */
export const notice = signal<string | null>(null);

/** A log given last that could not be read for want of columns: the reader can say which they are. */
export const unread = signal<{ readonly files: readonly File[]; readonly failure: Failure } | null>(null);

/** Tells the reader what is being done. */
type Say = (text: string, share?: number | null) => void;

let turn = 0;

/** Does one piece of work at a time; a later one ends it, and its outcome no longer counts. */
export async function work(title: string, task: (say: Say, stands: () => boolean) => Promise<void>) {
  turn += 1;
  const mine = turn;
  const stands = () => mine === turn;
  const say: Say = (text, share = null) => {
    if (stands()) job.value = { title, text, share };
  };
  problem.value = null;
  leftAside.value = [];
  seeking.value = false;
  say('fetching the log');
  try {
    await task(say, stands);
  } catch (error) {
    if (stands()) {
      problem.value = error instanceof TaskFailed ? error.failure : failureOf(error, { file: title });
    }
  } finally {
    if (stands()) job.value = null;
  }
}

/** Ends what is being worked on; the flight that is shown stays. */
export function stopWork(): void {
  turn += 1;
  stopAsking();
  job.value = null;
  seeking.value = false;
}

function show(source: FlightSource, files: FlightFiles, result: ReviewResult): void {
  current.value = { source, files, ...result };
  if (route.peek().view.flight !== source.id) go('review', { flight: source.id });
}

function bookId(source: FlightSource): string | null {
  return source.origin === 'book' ? source.id.replace('book:', '') : null;
}

/** What names the log of a flight. */
function keyOf(source: FlightSource): string {
  return bookId(source) ?? source.id;
}

/** True while the flight that is shown is flown again to find what cost most. */
export const seeking = signal(false);

/** Second pass over the flight that is shown: what cost what, found by flying it again, takes seconds. */
async function seekCauses({ source, files, map }: OpenFlight, stands: () => boolean): Promise<void> {
  const shown = current.peek();
  if (!stands() || shown === null || shown.analysis.review.causesSought) return;
  // The answer stands already: this goes on beside it, and is told where the findings will be.
  job.value = null;
  seeking.value = true;
  try {
    const { analysis } = await ask('review', { ...reviewRequest(keyOf(source), files), map, causes: true });
    const now = current.peek();
    if (!stands() || now === null || now.source.id !== source.id) return;
    // The strips stay what they are, so that the charts need not be drawn anew.
    current.value = { ...now, analysis: { ...now.analysis, review: analysis.review } };
  } finally {
    if (stands()) seeking.value = false;
  }
}

/** Reviews a flight of the list and shows it. */
export function openFlight(source: FlightSource): Promise<void> {
  notice.value = null;
  return work(source.title, async (say, stands) => {
    const files = await source.load();
    if (!stands()) return;
    const result = await ask('review', reviewRequest(keyOf(source), files), say);
    if (!stands()) return;
    show(source, files, result);
    await keepSummary(source, result);
    await seekCauses({ source, files, ...result }, stands);
  });
}

/** The book shows what the review says now: a later lossbook may judge otherwise than the one that kept it. */
async function keepSummary(source: FlightSource, { analysis }: ReviewResult): Promise<void> {
  const flight = bookFlights.peek().find((f) => f.id === bookId(source));
  if (flight === undefined) return;
  const summary = summaryOf(analysis.review);
  if (JSON.stringify(summary) === JSON.stringify(flight.summary)) return;
  await changeFlight(flight.id, { summary, changedAt: flight.changedAt });
}

/**
 * Reviews the flight that is shown once more, with another card (null = none), plan, part or choice of columns. What
 * worked is kept: card, plan and part with a flight of the logbook, columns for every log with the same headers.
 */
export function reviewAgain(changes: {
  readonly card?: TextFile | null;
  readonly plan?: TextFile | null;
  readonly part?: number;
  readonly map?: readonly ColumnChoice[];
}): Promise<void> {
  const shown = current.peek();
  if (shown === null) return Promise.resolve();
  const { map, ...others } = changes;
  const { source } = shown;
  return work(source.title, async (say, stands) => {
    const files: FlightFiles = { ...shown.files, ...others };
    const request = reviewRequest(keyOf(source), files);
    const result = await ask('review', map === undefined ? request : { ...request, map }, say);
    if (!stands()) return;
    const id = bookId(source);
    // Kept before it is shown: what the reader sees is not lost with the tab.
    if (id !== null) {
      const there = await changeFlight(id, { ...others, summary: summaryOf(result.analysis.review) });
      if (!there) notice.value = `${source.title} is no longer in the logbook; the change is not kept.`;
      if (!stands()) return;
    }
    current.value = { source, files, ...result };
    if (map !== undefined) await rememberColumns({ headers: result.headers, choices: map });
    await seekCauses({ source, files, ...result }, stands);
  });
}

/** Takes a flight that came with the page into the logbook. @param plan goes with it */
export function keepInBook(source: FlightSource, plan?: TextFile): Promise<void> {
  notice.value = null;
  return work(source.title, async (say, stands) => {
    const files = await source.load();
    const asking = { ask: askWhile({ ask }, stands) };
    const { known } = await takeIn(plan === undefined ? files : { ...files, plan }, asking, say);
    const withPlan = plan === undefined ? '' : ', with this plan';
    notice.value = known
      ? `${source.title} is in the logbook already${withPlan === '' ? '' : '; it now has this plan'}.`
      : `${source.title} is in the logbook${withPlan}.`;
  });
}

/**
 * Takes files that were dropped, pasted or picked: logs go into the logbook, and one that is alone is shown; a card
 * or plan alone goes to the flight that is shown; an exported logbook comes back.
 */
export async function openFiles(files: readonly File[]): Promise<void> {
  notice.value = null;
  problem.value = null;
  unread.value = null;
  leftAside.value = [];
  const [book, ...more] = files;
  if (book !== undefined && more.length === 0 && (await looksLikeBook(book))) return bringBack(book);
  stopWork();
  const mine = turn;
  const taken = await takeInAll(files);
  if (taken === null) return;
  const { arrived, leftAside: aside } = taken;
  if (arrived.length === 1 && mine === turn) adopt(taken.analyst);
  else taken.analyst.stop();
  if (mine !== turn) return;
  leftAside.value = aside;
  const [first] = arrived;
  const [failed] = aside;
  if (first !== undefined && arrived.length === 1) await showArrived(first);
  else if (first !== undefined) {
    notice.value = arrivedLine(arrived);
    go('logbook');
  }
  if (failed !== undefined && aside.length === 1 && arrived.length === 0) {
    problem.value = failed.failure;
    leftAside.value = [];
    if (
      /^(log-no-(time|motion|table)|map-.*)$/.test(failed.failure.code ?? '') &&
      failed.failure.columns?.length
    )
      unread.value = { files, failure: failed.failure };
  }
  if (arrived.length === 0 && aside.length === 0) await takeAlone(taken);
}

async function showArrived({ flight, result, known }: Arrived): Promise<void> {
  if (known) notice.value = `${flight.title} was in the logbook already and is opened from there.`;
  const source = bookSource(flight);
  // The kept copy, not the file given: that one may change on the disk.
  const files = await source.load();
  show(source, files, result);
  await work(flight.title, (_, stands) => seekCauses({ source, files, ...result }, stands));
}

function arrivedLine(arrived: readonly Arrived[]): string {
  const known = arrived.filter((a) => a.known).length;
  const fresh = arrived.length - known;
  const parts = [
    fresh > 0 ? `${fresh} ${fresh === 1 ? 'flight' : 'flights'} came into the logbook` : '',
    known > 0 ? `${known} ${known === 1 ? 'was' : 'were'} there already` : '',
  ];
  return sentence(parts.filter((p) => p !== '').join(', '));
}

/** A card or plan without a log belongs to the flight that is shown. */
async function takeAlone({ loneCards, lonePlans }: TakenIn): Promise<void> {
  const [card] = loneCards;
  const [plan] = lonePlans;
  const lone = card ?? plan;
  if (lone === undefined) return;
  if (current.peek() === null) {
    const code = card === undefined ? 'log-is-a-plan' : 'log-is-a-card';
    problem.value = failureOf(new LossbookError(code, {}, { file: lone.name }));
    return;
  }
  await reviewAgain({
    ...(card === undefined ? {} : { card: await textOf(card) }),
    ...(plan === undefined ? {} : { plan: await textOf(plan) }),
  });
}

/** Brings an exported logbook back. */
function bringBack(file: File): Promise<void> {
  return work(file.name, async (say, stands) => {
    const { importBook } = await import('./book/importBook.ts');
    const { came, there } = await importBook(file, say, stands);
    notice.value = sentence(
      `${came} ${came === 1 ? 'flight' : 'flights'} came into the logbook from ${file.name}${there > 0 ? `, ${there} ${there === 1 ? 'was' : 'were'} there already` : ''}`,
    );
    go('logbook');
  });
}

let bookIsOpen: Promise<void> = Promise.resolve();

/**
 * Fills the list, and opens the flight given on the command line where the address names none. Does not wait for it:
 * a review that another takes the place of never ends, and the address is to be followed meanwhile.
 */
export async function start(): Promise<void> {
  bookIsOpen = openBook();
  const [given, withPage] = await Promise.all([openedFlights(), sampleFlights()]);
  opened.value = given ?? [];
  samples.value = withPage;
  followOffline(given === null);
  const [first] = opened.peek();
  const { screen, view } = route.peek();
  if (first !== undefined && screen === '' && view.flight === undefined) void openFlight(first);
}

/** Opens the flight that the address names, when it is not the one shown. */
export async function followRoute(): Promise<void> {
  const { screen, view } = route.peek();
  const asked = view.flight;
  if (screen === 'logbook' || asked === undefined) return;
  if (current.peek()?.source.id === asked || job.peek() !== null) return;
  if (asked.startsWith('book:')) await bookIsOpen;
  const named = flights.peek().find((f) => f.id === asked);
  if (named !== undefined) return openFlight(named);
  notice.value = 'That flight is not in the logbook of this browser. Give its log again.';
  go('logbook');
}
