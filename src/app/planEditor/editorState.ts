import { computed, effect, signal, untracked } from '@preact/signals';
import type { PlanAxis } from '../../plan/types.ts';
import { createAnalyst, TaskFailed } from '../analyst.ts';
import type { TextFile } from '../book/types.ts';
import { failureOf } from '../failure.ts';
import { mostRows, planFileName } from '../plan/planFile.ts';
import type { EditablePlan, Failure, PlanCheck, PlanCurve } from '../protocol.ts';
import { current, keepInBook, reviewAgain } from '../state.ts';
import { onAxis } from './axisChange.ts';
import { keepPlan, keptPlan } from './draftStore.ts';
import { begin, change, type History, redo, settle, undo } from './history.ts';
import {
  blankSheet,
  type ColumnName,
  fileHeader,
  filledRows,
  type PlanSheet,
  sheetOf,
  sheetTable,
  sheetText,
} from './planSheet.ts';

/** A plan in the editor, with what it was begun from. */
interface Edited {
  readonly history: History<PlanSheet>;
  /** The flight's own plan when this was begun; null for none. */
  readonly plan: TextFile | null;
  /** The text that counts as unchanged. */
  readonly base: string;
  /** The name that counts as unchanged. */
  readonly baseName: string;
}

/** Plans that are edited, by the flight they are for; empty name for none. */
const edited = signal<ReadonlyMap<string, Edited>>(new Map());

const flightId = computed(() => current.value?.source.id ?? '');
const logName = () => current.peek()?.files.log.name ?? '';
const open = computed(() => edited.value.get(flightId.value) ?? null);

/** null until the flight's plan is read. */
export const sheet = computed(() => open.value?.history.now ?? null);
export const text = computed(() => (sheet.value === null ? '' : sheetText(sheet.value)));
/** True where the editor holds something else than the flight's plan. */
export const changed = computed(
  () => open.value !== null && (text.value !== open.value.base || planName.value !== open.value.baseName),
);
/** True where the flight that is shown was reviewed with this very plan. */
export const applied = computed(
  () => current.value?.files.plan?.text === text.value && planName.value === open.value?.baseName,
);
export const canUndo = computed(() => (open.value?.history.past.length ?? 0) > 0);
export const canRedo = computed(() => (open.value?.history.future.length ?? 0) > 0);
export const planName = computed(() => sheet.value?.name ?? 'new.plan.csv');

/** Something that the editor did and the reader should know. */
export const said = signal<readonly string[]>([]);
/** Why the flight's own plan does not stand in the editor. */
export const unread = signal<Failure | null>(null);
/** The row that the keys and buttons are about. */
export const activeRow = signal<number | null>(null);
/** A cell as it is being written; everywhere else the sheet's own entry is shown. */
export const writing = signal<{
  readonly id: number;
  readonly column: ColumnName;
  readonly entry: string;
} | null>(null);

function put(id: string, next: Edited): void {
  edited.value = new Map(edited.peek()).set(id, next);
  const { name } = next.history.now;
  const table = sheetText(next.history.now);
  const same = table === next.base && name === next.baseName;
  keepPlan(id, logName(), same ? null : { name, text: table });
}

function putHistory(history: History<PlanSheet> | null): void {
  const before = open.peek();
  if (before !== null && history !== null) put(flightId.peek(), { ...before, history });
}

/** Puts another sheet in place; see `History.change` for `under`. */
export function edit(next: PlanSheet, under: string | null = null): void {
  const now = open.peek();
  if (now !== null) putHistory(change(now.history, next, under));
}

/** A change that went on is whole: the next is a step of its own. */
export function settleEdit(): void {
  writing.value = null;
  const now = open.peek();
  if (now !== null) putHistory(settle(now.history));
}

function step(by: typeof undo, word: string): void {
  const now = open.peek();
  const history = now === null ? null : by(now.history);
  if (history === null) return;
  writing.value = null;
  putHistory(history);
  said.value = [word];
}

export function undoEdit(): void {
  step(undo, 'The last change is undone.');
}

export function redoEdit(): void {
  step(redo, 'The change is made again.');
}

/** Takes another sheet in place of this one, as one step, and says what was done. */
export function replaceSheet(next: PlanSheet, ...notes: readonly string[]): void {
  edit(next);
  activeRow.value = next.rows[0]?.id ?? null;
  said.value = notes;
}

/** Takes the edits back. */
export function revert(): void {
  const id = flightId.peek();
  const rest = new Map(edited.peek());
  rest.delete(id);
  edited.value = rest;
  keepPlan(id, logName(), null);
  said.value = [];
  void openSheet();
}

export function chooseAxis(axis: PlanAxis): void {
  const now = sheet.peek();
  if (now === null || now.axis === axis) return;
  const flight = current.peek();
  const next = onAxis(now, axis, flight?.analysis ?? null);
  const placed = (s: PlanSheet) => s.rows.filter((r) => r.at !== null).length;
  const open = placed(now) - placed(next);
  const notes =
    placed(now) === 0
      ? []
      : flight === null
        ? [`The rows stand without ${axis} now: without a flight nobody knows where they belong.`]
        : [
            `Each row now stands at the ${axis} that ${flight.source.title} had at the same moment.`,
            ...(open === 0
              ? []
              : [
                  `${open === 1 ? 'One row is' : `${open} rows are`} left open: on its way up it was not there.`,
                ]),
          ];
  replaceSheet(next, ...notes);
}

function freshName(): string {
  const flight = current.peek();
  return flight === null ? 'new.plan.csv' : planFileName(flight.files.log.name);
}

/** Reads plans for the editor; a worker of its own, so that the review that runs goes on. */
const reader = createAnalyst();

/** The sheet of a plan that the engine gave. */
export function sheetOfEngine({ plan }: EditablePlan): PlanSheet {
  return sheetOf(plan.name, plan.text, Number.POSITIVE_INFINITY) ?? blankSheet(plan.name);
}

/** Begins with what the browser kept unsaved, else with the flight's plan, else with empty rows. */
async function openSheet(): Promise<void> {
  const id = flightId.peek();
  const flight = current.peek();
  const plan = flight?.files.plan ?? null;
  unread.value = null;
  const start = (sheet: PlanSheet, base: PlanSheet) =>
    put(id, { history: begin(sheet), plan, base: sheetText(base), baseName: base.name });
  let base = plan === null ? blankSheet(freshName()) : sheetOf(planFileName(plan.name), plan.text, mostRows);
  let notes: readonly string[] = [];
  if (base === null && plan !== null) {
    try {
      const file = { name: plan.name, blob: new Blob([plan.text]) };
      const read = await reader.ask('editPlan', { plan: file, card: flight?.files.card ?? null });
      base = sheetOfEngine(read);
      notes = read.notes;
    } catch (error) {
      unread.value = error instanceof TaskFailed ? error.failure : failureOf(error, { file: plan.name });
      base = blankSheet(freshName());
    }
    if (id !== flightId.peek() || edited.peek().has(id)) return;
  }
  if (base === null) return;
  const kept = keptPlan(id, logName());
  const draft = kept === null ? null : sheetOf(kept.name, kept.text, Number.POSITIVE_INFINITY);
  start(draft ?? base, base);
  activeRow.value = sheet.peek()?.rows[0]?.id ?? null;
  said.value = draft === null ? notes : ['Edits that were left here unsaved are back.'];
}

/** Keeps the editor with the flight that is shown and its plan, unless there are edits; returns what ends that. */
export function followFlight(): () => void {
  return effect(() => {
    const id = flightId.value;
    const plan = current.value?.files.plan ?? null;
    untracked(() => {
      const now = edited.peek().get(id);
      if (now === undefined) return void openSheet();
      if (now.plan === plan || changed.peek()) return;
      if (plan !== null && plan.text === text.peek()) return put(id, { ...now, plan });
      revert();
    });
  });
}

/** What the engine's reader says of the sheet; null until it has spoken, and of an empty one. */
export const check = signal<PlanCheck | null>(null);
const checkedText = signal('');
/** True while what the check says is of an earlier text. */
export const checking = computed(() => checkedText.value !== text.value);
export const empty = computed(() => sheet.value === null || filledRows(sheet.value).length === 0);

const lastRight = signal<{
  readonly flight: string;
  readonly axis: PlanAxis;
  readonly curve: PlanCurve;
} | null>(null);
/** The controls of the rows, or while those have faults, of the rows as they last were right; null for none. */
export const curve = computed(() => {
  const last = lastRight.value;
  const same = last?.flight === flightId.value && last.axis === sheet.value?.axis;
  return same && !empty.value ? last.curve : null;
});

const checker = createAnalyst();
const pause_ms = 120;

/** Keeps `check` in step with the sheet; returns what ends that. */
export function followCheck(): () => void {
  let timer = 0;
  const end = effect(() => {
    const now = sheet.value;
    const given = { name: planName.value, text: text.value };
    const nothing = now === null || empty.value;
    clearTimeout(timer);
    const take = (result: PlanCheck | null) => {
      if (given.text !== text.peek()) return;
      check.value = result;
      checkedText.value = given.text;
      const axis = sheet.peek()?.axis;
      if (result?.curve != null && axis !== undefined)
        lastRight.value = { flight: flightId.peek(), axis, curve: result.curve };
    };
    if (nothing) return take(null);
    timer = window.setTimeout(() => {
      checker.ask('checkPlan', { plan: given, ...sheetTable(now) }).then(take, () => take(null));
    }, pause_ms);
  });
  return () => {
    clearTimeout(timer);
    end();
  };
}

/** What is wrong with each row, by its id. */
export const rowFaults = computed(() => {
  const now = sheet.value;
  const faults = new Map<
    number,
    { readonly columns: ReadonlySet<string>; readonly texts: readonly string[] }
  >();
  if (now === null || checking.value) return faults;
  const rows = filledRows(now);
  for (const { row, column, text: told } of check.value?.faults ?? []) {
    const id = row === null ? undefined : rows[row - 1]?.id;
    if (id === undefined) continue;
    const before = faults.get(id);
    faults.set(id, {
      columns: new Set([...(before?.columns ?? []), ...(column === null ? [] : [column])]),
      texts: [...(before?.texts ?? []), told],
    });
  }
  return faults;
});

export function isFaulty(id: number, column: ColumnName): boolean {
  const now = sheet.value;
  return now !== null && (rowFaults.value.get(id)?.columns.has(fileHeader(now.axis, column)) ?? false);
}

/** Reviews the flight that is shown against the sheet; a flight of the logbook keeps it. */
export async function holdAgainst(): Promise<void> {
  settleEdit();
  const id = flightId.peek();
  const plan: TextFile = { name: planName.peek(), text: text.peek() };
  said.value = [];
  await reviewAgain({ plan });
  const now = edited.peek().get(id);
  if (flightId.peek() === id && current.peek()?.files.plan === plan && now !== undefined)
    put(id, { ...now, plan, base: plan.text, baseName: plan.name });
}

/** Takes the flight that is shown into the logbook, with the sheet as its plan. */
export async function keepWithFlight(): Promise<void> {
  const flight = current.peek();
  if (flight !== null) await keepInBook(flight.source, { name: planName.peek(), text: text.peek() });
}
