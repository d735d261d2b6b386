import { useId, useState } from 'preact/hooks';
import { inUnits, shownIn } from '../units.ts';
import { type Json, type Path, pathText, valueAt } from './cardDraft.ts';
import type { CardField } from './cardFields.ts';
import { card, faultAt, setValue } from './cardState.ts';
import { curveText, entryText, readCurve, readEntry } from './entries.ts';

/** The field in the units chosen; a curve's numbers stay in those that its note names. */
function fieldInUnits(field: CardField): CardField {
  if (field.unit === undefined || field.kind !== undefined) return field;
  const { unit, scale } = shownIn(field.unit, field.scale ?? 1);
  return { ...field, unit, scale, ...(field.note === undefined ? {} : { note: inUnits(field.note) }) };
}

function shownText(field: CardField, value: Json | undefined): string {
  return field.kind === 'curve' ? curveText(value) : entryText(value, field.scale ?? 1);
}

function read(field: CardField, entry: string): Json | undefined {
  if (field.kind === 'curve') return readCurve(entry);
  if (field.kind === 'text' || field.kind === 'lines') return entry === '' ? undefined : entry;
  return readEntry(entry, field.scale ?? 1, field.quantity);
}

/** One entry of the form, with its unit, what holds when it is empty, and what the reader says against it. */
export function Entry({ field: given, at }: { readonly field: CardField; readonly at: Path }) {
  const id = useId();
  const field = fieldInUnits(given);
  const path = [...at, field.key];
  // While the reader writes, the entry is as written; afterwards as the card has it.
  const [writing, setWriting] = useState<string | null>(null);
  const value = writing ?? shownText(field, valueAt(card.value, path));
  const fault = faultAt(pathText(path));
  const shared = {
    id,
    value,
    autocomplete: 'off',
    'aria-invalid': fault === null ? undefined : true,
    'aria-describedby': field.note || fault !== null ? `${id}-note` : undefined,
    onFocus: () => setWriting(value),
    onInput: (event: Event & { readonly currentTarget: HTMLInputElement | HTMLTextAreaElement }) => {
      setWriting(event.currentTarget.value);
      setValue(path, read(field, event.currentTarget.value));
    },
    onBlur: () => setWriting(null),
  };
  return (
    <div class={field.wide ? 'entry wide' : 'entry'}>
      <label for={id}>
        {field.label}
        {field.unit === undefined ? null : <span class="unit"> {field.unit}</span>}
      </label>
      {field.kind === 'lines' ? (
        <textarea rows={2} {...shared} />
      ) : (
        <input
          type="text"
          inputMode={field.kind === undefined ? 'decimal' : undefined}
          spellcheck={false}
          {...shared}
        />
      )}
      {fault === null && field.note === undefined ? null : (
        <p id={`${id}-note`} class={fault === null ? 'entry-note' : 'entry-note fault'}>
          {fault ?? field.note}
        </p>
      )}
    </div>
  );
}

export function Entries({ fields, at }: { readonly fields: readonly CardField[]; readonly at: Path }) {
  return (
    <div class="entries">
      {fields.map((field) => (
        <Entry key={field.key} field={field} at={at} />
      ))}
    </div>
  );
}
