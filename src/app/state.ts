import { computed, signal } from '@preact/signals';
import type { ColumnSample } from '../log/columnSample.ts';
import type { ColumnChoice } from '../log/types.ts';
import type { Analysis } from '../review/types.ts';
import { ask, askWhile, stopAsking, TaskFailed } from './analyst.ts';
import { bookFlights, changeFlight, openBook, rememberColumns } from './book/book.ts';
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
import { type TakenIn, takeIn } from './intake.ts';
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
  /** True once its causes were sought, also where none could be found. */
  readonly sought: boolean;
}

/** What a flight can be reviewed anew with. */
export interface ReviewChanges {
  readonly card?: TextFile | null;
  readonly plan?: TextFile | null;
  readonly part?: number;
  readonly map?: readonly ColumnChoice[];
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

/**
 * What the flight that is shown is being reviewed anew with; null while it is not. Further changes come on top, so
 * that the later of two does not undo the earlier.
 */
export const asking = signal<{ readonly files: FlightFiles; readonly changes: ReviewChanges } | null>(null);

/** A log given last that could not be read for want of columns: the reader can say which they are. */
export const unread = signal<{ readonly files: readonly File[]; readonly failure: Failure } | null>(null);

/** True where the reader is to say which the columns of that log are: the address names no flight there. */
export const sayingColumns = computed(
  () => unread.value !== null && route.value.screen === 'columns' && route.value.view.flight === undefined,
);

/** Tells the reader what is being done. */
type Say = (text: string, share?: number | null) => void;

let turn = 0;

/** Says later whether what is begun now still stands: false once other work was begun, or all was stopped. */
export function asOfNow(): () => boolean {
  const mine = turn;
  return () => mine === turn;
}

function inWords(error: unknown, file: string): Failure {
  return error instanceof TaskFailed ? error.failure : failureOf(error, { file });
}

/** Does one piece of work at a time; a later one ends it, and its outcome no longer counts. */
export async function work(title: string, task: (say: Say, stands: () => boolean) => Promise<void>) {
  turn += 1;
  const stands = asOfNow();
  const say: Say = (text, share = null) => {
    if (stands()) job.value = { title, text, share };
  };
  problem.value = null;
  leftAside.value = [];
  seeking.value = false;
  asking.value = null;
  say('fetching the log');
  try {
    await task(say, stands);
  } catch (error) {
    if (stands()) {
      problem.value = inWords(error, title);
    }
  } finally {
    if (stands()) {
      job.value = null;
      asking.value = null;
    }
  }
  await seekCauses(stands);
}

/** Makes way for other work: what is being worked on ends, and the flight that is shown stays as it is. */
export function makeWay(): void {
  turn += 1;
  stopAsking();
  job.value = null;
  seeking.value = false;
  asking.value = null;
}

/** Ends what is being worked on; the flight that is shown stays. */
export function stopWork(): void {
  makeWay();
  void seekCauses(asOfNow());
}

export function show(source: FlightSource, files: FlightFiles, result: ReviewResult): void {
  current.value = { source, files, ...result, sought: result.analysis.review.causesSought };
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

/**
 * Second pass over the flight that is shown: what cost what, found by flying it again, takes seconds. It is made when
 * nothing else is worked on, and begun anew where other work ended it.
 */
export async function seekCauses(stands: () => boolean): Promise<void> {
  const shown = current.peek();
  if (!stands() || shown === null || shown.sought) return;
  const { source, files, map } = shown;
  seeking.value = true;
  const found = await ask('review', { ...reviewRequest(keyOf(source), files), map, causes: true }).catch(
    (error: unknown) => {
      if (stands()) problem.value = inWords(error, source.title);
      return null;
    },
  );
  if (!stands()) return;
  // The strips stay what they are, so that the charts need not be drawn anew.
  const analysis = found === null ? shown.analysis : { ...shown.analysis, review: found.analysis.review };
  current.value = { ...shown, analysis, sought: true };
  seeking.value = false;
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
 * @param told what the reader is told once the flight stands so
 */
export function reviewAgain(changes: ReviewChanges, told: string | null = null): Promise<void> {
  const shown = current.peek();
  if (shown === null) return Promise.resolve();
  const before = asking.peek();
  const { map, ...others } = { ...before?.changes, ...changes };
  const { source } = shown;
  return work(source.title, async (say, stands) => {
    const files: FlightFiles = { ...shown.files, ...others };
    asking.value = { files, changes: { ...others, ...(map === undefined ? {} : { map }) } };
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
    current.value = { source, files, ...result, sought: result.analysis.review.causesSought };
    if (told !== null) notice.value = told;
    if (map !== undefined) await rememberColumns({ headers: result.headers, choices: map });
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

let bookIsOpen: Promise<void> = Promise.resolve();
/** True once every flight that there is stands in the list: the logbook's and those that come with the page. */
export const listed = signal(false);

/**
 * Fills the list, and opens the flight given on the command line where the address names none. Does not wait for it:
 * a review that another takes the place of never ends, and the address is to be followed meanwhile.
 */
export async function start(): Promise<void> {
  bookIsOpen = openBook();
  const [given, withPage] = await Promise.all([openedFlights(), sampleFlights()]);
  opened.value = given ?? [];
  samples.value = withPage;
  void bookIsOpen.then(() => {
    listed.value = true;
  });
  followOffline(given === null);
  const [first] = opened.peek();
  const { screen, view } = route.peek();
  if (first !== undefined && screen === '' && view.flight === undefined) void openFlight(first);
}

/** The flight that is being read because the address names it. */
let led: { readonly id: string; readonly stands: () => boolean } | null = null;

/** Opens the flight that the address names, when it is not the one shown; what it named before is read no further. */
export async function followRoute(): Promise<void> {
  const { screen, view } = route.peek();
  const asked = view.flight;
  if (screen === 'logbook' || asked === undefined) return;
  const onTheWay = led?.stands() && job.peek() !== null ? led.id : null;
  if (onTheWay === asked) return;
  if (current.peek()?.source.id === asked) {
    if (onTheWay !== null) stopWork();
    return;
  }
  if (asked.startsWith('book:')) {
    const stands = asOfNow();
    await bookIsOpen;
    // A book can open late: the reader may be somewhere else by now.
    if (!stands() || route.peek().view.flight !== asked) return;
  }
  const named = flights.peek().find((f) => f.id === asked);
  if (named !== undefined) {
    const opening = openFlight(named);
    led = { id: asked, stands: asOfNow() };
    return opening;
  }
  notice.value = 'That flight is not in the logbook of this browser. Give its log again.';
  go('logbook');
}
