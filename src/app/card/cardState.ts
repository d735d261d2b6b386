import { computed, effect, signal } from '@preact/signals';
import { createAnalyst } from '../analyst.ts';
import type { TextFile } from '../book/types.ts';
import { browserStorage } from '../browserStorage.ts';
import { dropDraft, keepDraft, keptDraft } from '../keptDrafts.ts';
import type { CardCheck } from '../protocol.ts';
import { current, reviewAgain } from '../state.ts';
import { cardOf, cardText, type Json, type JsonObject, type Path, withValue } from './cardDraft.ts';

const storage = browserStorage();

/** A card begun from nothing: one stage to fill in. */
const blank: JsonObject = { vehicle: { stages: [{}] } };

/** Cards that were edited and not yet applied, by the flight they are for; empty name for none. */
const edited = signal<ReadonlyMap<string, string>>(new Map());

/** Flights whose edits came back from before the page was closed. */
const broughtBack = signal<ReadonlySet<string>>(new Set());

const flightId = computed(() => current.value?.source.id ?? '');
/** The log that the card is for; empty for none. */
const logName = computed(() => current.value?.files.log.name ?? '');

/** The card that the flight was reviewed with. */
const appliedText = computed(() => current.value?.files.card?.text ?? null);

/** The card's text as it stands in the editor: what both sides show. */
export const text = computed(() => edited.value.get(flightId.value) ?? appliedText.value ?? cardText(blank));

/** The card that the form shows: that of the text, and while the text is no JSON, the last that was. */
let lastCard: JsonObject = blank;
export const card = computed<JsonObject>(() => {
  lastCard = cardOf(text.value) ?? lastCard;
  return lastCard;
});
/** True while the text is no JSON, and the form waits for it. */
export const broken = computed(() => cardOf(text.value) === null);

/** True where the editor holds something else than the flight was reviewed with. */
export const changed = computed(() => edited.value.has(flightId.value) && text.value !== appliedText.value);

/** True while the editor shows edits that were left here before the page was closed. */
export const restored = computed(() => changed.value && broughtBack.value.has(flightId.value));

// Each flight's own draft is looked for once, when its card can first be seen.
effect(() => {
  const id = flightId.value;
  const draft = storage && keptDraft(storage, 'card', id, logName.value);
  if (!draft || edited.peek().has(id)) return;
  if (draft.text === appliedText.peek()) return forget(id);
  edited.value = new Map(edited.peek()).set(id, draft.text);
  broughtBack.value = new Set(broughtBack.peek()).add(id);
});

function forget(id: string): void {
  if (storage) dropDraft(storage, 'card', id);
  if (!broughtBack.peek().has(id)) return;
  const rest = new Set(broughtBack.peek());
  rest.delete(id);
  broughtBack.value = rest;
}

export function setText(next: string): void {
  const id = flightId.peek();
  edited.value = new Map(edited.peek()).set(id, next);
  if (!storage) return;
  if (changed.peek()) keepDraft(storage, 'card', id, { log: logName.peek(), text: next, at: Date.now() });
  else dropDraft(storage, 'card', id);
}

/** Puts a value of the form into the card; undefined takes it out. */
export function setValue(path: Path, value: Json | undefined): void {
  setText(cardText(withValue(card.peek(), path, value)));
}

/** Takes the edits back. */
export function revert(): void {
  const rest = new Map(edited.peek());
  rest.delete(flightId.peek());
  edited.value = rest;
  forget(flightId.peek());
}

export const cardName = computed(() => {
  const open = current.value;
  if (open === null) return 'new.mission.json';
  return open.files.card?.name ?? `${open.source.title.replace(/\.[^.]*$/, '')}.mission.json`;
});

/** Reviews the open flight with the card in the editor; a flight of the logbook keeps it. */
export async function apply(): Promise<void> {
  const given: TextFile = { name: cardName.peek(), text: text.peek() };
  const id = flightId.peek();
  await reviewAgain({ card: given });
  // What was written since then stays.
  const stands = flightId.peek() === id && current.peek()?.files.card?.text === given.text;
  if (stands && text.peek() === given.text) revert();
}

/** What the engine's reader says of the text; null until it has spoken. */
export const check = signal<CardCheck | null>(null);

/** A worker of its own, so that a check never ends a review that runs. */
const checker = createAnalyst();
const pause_ms = 150;

/** Keeps `check` in step with the text; returns what ends that. */
export function followCheck(): () => void {
  let timer = 0;
  const end = effect(() => {
    const given = { name: cardName.value, text: text.value };
    clearTimeout(timer);
    timer = window.setTimeout(() => {
      checker.ask('card', given).then(
        (result) => {
          if (given.text === text.peek()) check.value = result;
        },
        () => {
          check.value = null;
        },
      );
    }, pause_ms);
  });
  return () => {
    clearTimeout(timer);
    end();
  };
}

/** The fault of a field, and of anything inside it. */
export function faultAt(path: string): string | null {
  return check.value?.faults.find((f) => f.field === path)?.text ?? null;
}
