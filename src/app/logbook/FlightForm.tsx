import { useId, useLayoutEffect, useRef } from 'preact/hooks';
import { bookFlights, changeFlight } from '../book/book.ts';
import { type BookFlight, pilotOf, vehicleOf } from '../book/types.ts';
import { notice } from '../state.ts';
import { readTags } from './arrange.ts';

function known(of: (flight: BookFlight) => readonly (string | null)[]): string[] {
  const words = bookFlights.value.flatMap(of).filter((w) => w !== null);
  return [...new Set(words)].sort((a, b) => a.localeCompare(b, 'en'));
}

function Suggestions({ id, words }: { readonly id: string; readonly words: readonly string[] }) {
  return (
    <datalist id={id}>
      {words.map((w) => (
        <option key={w} value={w} />
      ))}
    </datalist>
  );
}

/** What the reader says of a flight. Pilot and vehicle left empty are the mission card's. */
export function FlightForm({ flight, onDone }: { readonly flight: BookFlight; readonly onDone: () => void }) {
  const id = useId();
  const form = useRef<HTMLFormElement>(null);
  useLayoutEffect(() => {
    const first = form.current?.querySelector('input');
    first?.focus();
    first?.select();
  }, []);

  const save = async () => {
    if (form.current === null) return;
    const entered = new FormData(form.current);
    const text = (name: string) => String(entered.get(name) ?? '').trim();
    const there = await changeFlight(flight.id, {
      title: text('title') || flight.title,
      pilot: text('pilot') || null,
      vehicle: text('vehicle') || null,
      tags: readTags(text('tags')),
      notes: text('notes'),
    });
    notice.value = there ? null : `${flight.title} is no longer in the logbook; the change is not kept.`;
    onDone();
  };

  return (
    <form
      ref={form}
      class="flight-form"
      aria-label={`About ${flight.title}`}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
      onKeyDown={(event) => {
        if (event.key === 'Escape') onDone();
      }}
    >
      <label>
        Name
        <input name="title" defaultValue={flight.title} autocomplete="off" />
      </label>
      <label>
        Pilot
        <input
          name="pilot"
          defaultValue={flight.pilot ?? ''}
          placeholder={flight.summary.pilot ?? ''}
          list={`${id}-pilots`}
          autocomplete="off"
        />
      </label>
      <label>
        Vehicle
        <input
          name="vehicle"
          defaultValue={flight.vehicle ?? ''}
          placeholder={flight.summary.vehicle ?? ''}
          list={`${id}-vehicles`}
          autocomplete="off"
        />
      </label>
      <label>
        Tags
        <input
          name="tags"
          defaultValue={flight.tags.join(', ')}
          placeholder="with commas between"
          autocomplete="off"
        />
      </label>
      <label class="wide">
        Notes
        <textarea name="notes" rows={3} defaultValue={flight.notes} />
      </label>
      <Suggestions id={`${id}-pilots`} words={known((f) => [pilotOf(f)])} />
      <Suggestions id={`${id}-vehicles`} words={known((f) => [vehicleOf(f)])} />
      <p class="wide buttons">
        <button type="submit" class="button">
          Save
        </button>
        <button type="button" class="plain" onClick={onDone}>
          Cancel
        </button>
      </p>
    </form>
  );
}
