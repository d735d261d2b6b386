import { computed, effect, signal, untracked } from '@preact/signals';
import { formatFigure } from '../../units/figures.ts';
import { type Analyst, createAnalyst, TaskFailed } from '../analyst.ts';
import type { TextFile } from '../book/types.ts';
import { failureOf } from '../failure.ts';
import type { FlightFiles, FlightSource } from '../flightSources.ts';
import { reviewRequest } from '../reviewRequest.ts';
import { current, problem } from '../state.ts';
import { inUnits } from '../units.ts';
import { planName, replaceSheet, sheet, sheetOfEngine } from './editorState.ts';
import { blankSheet, row } from './planSheet.ts';

/** What is being worked out for the editor; null while nothing is. */
export const working = signal<{
  readonly title: string;
  readonly text: string;
  readonly share: number | null;
  readonly stop: () => void;
} | null>(null);

const flightId = computed(() => current.value?.source.id ?? '');
// What is worked out is for the flight that is shown: in the editor of another it has no place.
effect(() => {
  flightId.value;
  untracked(() => working.peek()?.stop());
});

type Ask = Analyst['ask'];

/** Works a plan out beside the review that stands; asking anew, or `stop`, ends it and changes nothing. */
async function workOut(
  title: string,
  task: (ask: Ask, stands: () => boolean) => Promise<void>,
): Promise<void> {
  working.peek()?.stop();
  const analyst = createAnalyst();
  const mine = {
    title,
    text: 'fetching it',
    share: null,
    stop: () => {
      analyst.stop();
      working.value = null;
    },
  };
  let shown: typeof working.value = mine;
  working.value = mine;
  const stands = () => working.peek() === shown;
  const ask: Ask = (name, request) =>
    analyst.ask(name, request, (text, share) => {
      if (!stands()) return;
      shown = { ...mine, text, share };
      working.value = shown;
    });
  problem.value = null;
  try {
    await task(ask, stands);
  } catch (error) {
    if (stands())
      problem.value = error instanceof TaskFailed ? error.failure : failureOf(error, { file: title });
  }
  if (stands()) mine.stop();
}

export function startBlank(): void {
  replaceSheet(blankSheet(planName.peek(), sheet.peek()?.axis));
}

/** A gravity turn in a few rows: what each row is for shows; the figures are invented. */
const turn: readonly (readonly [at_s: number, pitch_deg: number, throttle_percent: number])[] = [
  [0, 90, 100],
  [15, 90, 100],
  [25, 85, 100],
  [60, 65, 80],
  [100, 45, 100],
  [160, 25, 100],
  [260, 10, 100],
  [400, 0, 100],
];

export function startFromTurn(): void {
  const rows = turn.map(([at, pitch, throttle]) =>
    row({ at, pitch, throttle, event: at === 15 ? 'pitch-over' : null }),
  );
  replaceSheet(
    { name: planName.peek(), axis: 'time', rows },
    'A gravity turn with invented figures: it fits no rocket in particular. Change them to yours.',
  );
}

async function takeFlight(title: string, key: string, load: () => Promise<FlightFiles>): Promise<void> {
  await workOut(title, async (ask, stands) => {
    const files = await load();
    if (!stands()) return;
    const map = current.peek()?.source.id === key ? current.peek()?.map : undefined;
    const request = reviewRequest(key, files);
    const found = await ask('planOfFlight', map === undefined ? request : { ...request, map });
    if (!stands()) return;
    const notes = [`The controls that ${title} flew.`, ...found.notes];
    replaceSheet({ ...sheetOfEngine(found), name: planName.peek() }, ...notes);
  });
}

/** The controls of the flight that is shown. */
export async function startFromThis(): Promise<void> {
  const flight = current.peek();
  if (flight !== null) await takeFlight(flight.source.title, flight.source.id, async () => flight.files);
}

/** The controls of another flight of the list. */
export function startFromOther(source: FlightSource): Promise<void> {
  return takeFlight(source.title, source.id, source.load);
}

/** The best ascent that is found for the card of the flight that is shown. */
export async function startFromBest(card: TextFile): Promise<void> {
  await workOut('The best ascent', async (ask, stands) => {
    const { plan, margin_m_s, reachesTarget } = await ask('best', { card, name: planName.peek() });
    if (!stands()) return;
    const size = inUnits(`${formatFigure(Math.abs(margin_m_s), { decimals: 0 })} m/s`);
    replaceSheet(
      { ...sheetOfEngine({ plan, notes: [] }), name: planName.peek() },
      reachesTarget
        ? `The best ascent that was found: it arrives with ${size} to spare.`
        : `No ascent of this rocket was found that arrives: this is the best one, which misses ${size}.`,
    );
  });
}

/** A plan's file, or another flight's log. */
export async function startFromFile(file: File): Promise<void> {
  await workOut(file.name, async (ask, stands) => {
    const card = current.peek()?.files.card ?? null;
    const found = await ask('editPlan', { plan: { name: file.name, blob: file }, card });
    if (stands()) replaceSheet(sheetOfEngine(found), `Read from ${file.name}.`, ...found.notes);
  });
}

/** A pasted table whose first line names its columns. */
export async function startFromPasted(text: string): Promise<void> {
  await workOut('The pasted table', async (ask, stands) => {
    const plan = { name: 'pasted table', blob: new Blob([text]) };
    const found = await ask('editPlan', { plan, card: current.peek()?.files.card ?? null });
    if (!stands()) return;
    const next = { ...sheetOfEngine(found), name: planName.peek() };
    replaceSheet(next, `The pasted table stands here, ${next.rows.length} rows.`, ...found.notes);
  });
}
