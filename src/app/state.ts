import { signal } from '@preact/signals';
import { LossbookError } from '../errors.ts';
import type { Analysis } from '../review/types.ts';
import { ask, TaskFailed } from './analyst.ts';
import { failureOf } from './failure.ts';
import {
  type FlightFiles,
  type FlightSource,
  givenFlights,
  openedFlights,
  readCard,
  sampleFlights,
} from './flightSources.ts';
import type { Failure } from './protocol.ts';
import { go, route } from './route.ts';

/** The flight on the review screen. */
export interface OpenFlight {
  readonly source: FlightSource;
  readonly files: FlightFiles;
  readonly analysis: Analysis;
}

/** Flights to choose from: opened on the command line, then given here, then samples. */
export const flights = signal<readonly FlightSource[]>([]);
/** Stays what it was while another flight is worked on, and when that one fails. */
export const current = signal<OpenFlight | null>(null);
/** What is being worked on, for the reader to see. */
export const job = signal<{ readonly title: string; readonly text: string } | null>(null);
export const problem = signal<Failure | null>(null);
/** Something worth knowing that is no error. */
export const notice = signal<string | null>(null);

let turn = 0;

async function review(source: FlightSource, load: () => Promise<FlightFiles>): Promise<void> {
  turn += 1;
  const mine = turn;
  problem.value = null;
  job.value = { title: source.title, text: 'fetching the log' };
  try {
    const files = await load();
    if (mine !== turn) return;
    const request = files.card === null ? { log: files.log } : { log: files.log, card: files.card };
    const analysis = await ask('review', request, (text) => {
      job.value = { title: source.title, text };
    });
    if (mine !== turn) return;
    current.value = { source, files, analysis };
    if (route.peek().screen !== 'review' || route.peek().view.flight !== source.id) {
      go('review', { flight: source.id });
    }
  } catch (error) {
    if (mine !== turn) return;
    problem.value = error instanceof TaskFailed ? error.failure : failureOf(error, { file: source.title });
  } finally {
    if (mine === turn) job.value = null;
  }
}

/** Reviews a flight of the list and shows it. */
export function openFlight(source: FlightSource): Promise<void> {
  notice.value = null;
  return review(source, source.load);
}

/**
 * Takes files that were dropped or picked: logs join the list and the first is reviewed; a card alone goes to the
 * flight that is shown.
 */
export async function openFiles(files: readonly File[]): Promise<void> {
  const { flights: added, loneCards, plans } = givenFlights(files);
  notice.value = plans.length
    ? `${plans.map((p) => p.name).join(', ')}: a plan. The page does not compare with plans yet; it was left aside.`
    : null;
  const [first] = added;
  if (first !== undefined) {
    flights.value = [
      ...flights.value.filter((f) => f.origin === 'opened'),
      ...added,
      ...flights.value.filter((f) => f.origin !== 'opened'),
    ];
    return review(first, first.load);
  }
  const [card] = loneCards;
  if (card === undefined) return;
  const shown = current.peek();
  if (shown === null) {
    problem.value = failureOf(new LossbookError('log-is-a-card', {}, { file: card.name }));
    return;
  }
  return review(shown.source, async () => ({ log: shown.files.log, card: await readCard(card) }));
}

/** Fills the list and opens the flight that the address names, or the one given on the command line. */
export async function start(): Promise<void> {
  const [opened, samples] = await Promise.all([openedFlights(), sampleFlights()]);
  flights.value = [...opened, ...flights.value, ...samples];
  await followRoute();
  const [first] = opened;
  if (first !== undefined && route.peek().screen === '' && current.peek() === null) await openFlight(first);
}

/** Opens the flight that the address names, when it is not the one shown. */
export async function followRoute(): Promise<void> {
  const { screen, view } = route.peek();
  if (screen !== 'review' || view.flight === undefined) return;
  if (current.peek()?.source.id === view.flight || job.peek() !== null) return;
  const named = flights.peek().find((f) => f.id === view.flight);
  if (named !== undefined) return openFlight(named);
  notice.value =
    'That flight was given as a file, and the page does not keep files between visits. Give it again.';
  go('flights');
}
