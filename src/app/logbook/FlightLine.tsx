import { useRef, useState } from 'preact/hooks';
import { numberText } from '../../exchange/figureText.ts';
import { deleteFlight, unsaved } from '../book/book.ts';
import { type BookFlight, pilotOf, vehicleOf } from '../book/types.ts';
import { bookSource } from '../flightSources.ts';
import { go } from '../route.ts';
import { current, openFlight } from '../state.ts';
import { speedIn } from '../units.ts';
import { FlightForm } from './FlightForm.tsx';
import { outcomeWords } from './outcome.ts';

/** A cell that says what it is to those who cannot see the column. */
function Cell({ name, text }: { readonly name: string; readonly text: string | null }) {
  return (
    <span class={`line-${name}`}>
      {text === null ? null : (
        <>
          <span class="unseen">{name} </span>
          {text}
        </>
      )}
    </span>
  );
}

/** One flight of the logbook: what is known of it, and what can be done with it. */
export function FlightLine({ flight }: { readonly flight: BookFlight }) {
  const [editing, setEditing] = useState(false);
  const edit = useRef<HTMLButtonElement>(null);
  const { summary } = flight;
  const shown = current.value?.source.id === `book:${flight.id}`;
  const margin = summary.margin_m_s;
  const speed = speedIn();
  return (
    <li class="line">
      <div class="line-cells">
        <span class="line-title">
          <button type="button" class="flight-title" onClick={() => void openFlight(bookSource(flight))}>
            {flight.title}
          </button>
          {shown ? <span class="quiet"> on the review screen</span> : null}
          {unsaved.value.has(flight.id) ? <span class="quiet"> until this page is closed</span> : null}
        </span>
        <Cell name="pilot" text={pilotOf(flight)} />
        <Cell name="vehicle" text={vehicleOf(flight)} />
        <Cell name="flown" text={summary.date} />
        <Cell name="attempt" text={summary.attempt === null ? null : String(summary.attempt)} />
        <Cell name="outcome" text={outcomeWords[summary.verdictCode] ?? null} />
        <span class={margin !== null && margin < 0 ? 'line-margin short' : 'line-margin'}>
          {margin === null ? null : (
            <>
              <span class="unseen">margin </span>
              {numberText(margin * speed.scale, 0)} {speed.unit}
            </>
          )}
        </span>
        <span class="line-actions">
          <button
            type="button"
            class="plain"
            ref={edit}
            aria-expanded={editing}
            onClick={() => setEditing(!editing)}
          >
            Edit<span class="unseen"> what is noted of {flight.title}</span>
          </button>
          {flight.plan === null ? null : (
            <button
              type="button"
              class="plain"
              onClick={() => go('plan-editor', { flight: bookSource(flight).id })}
            >
              Plan<span class="unseen"> of {flight.title}</span>
            </button>
          )}
          <button type="button" class="plain" onClick={() => void deleteFlight(flight)}>
            Delete<span class="unseen"> {flight.title}</span>
          </button>
        </span>
      </div>
      {flight.tags.length > 0 && !editing ? (
        <p class="line-tags">
          <span class="unseen">tags </span>
          {flight.tags.join(' · ')}
        </p>
      ) : null}
      {flight.notes !== '' && !editing ? <p class="line-notes">{flight.notes}</p> : null}
      {editing ? (
        <FlightForm
          flight={flight}
          onDone={() => {
            setEditing(false);
            edit.current?.focus();
          }}
        />
      ) : null}
    </li>
  );
}
