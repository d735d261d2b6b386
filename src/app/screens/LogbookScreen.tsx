import { bookFlights } from '../book/book.ts';
import type { FlightSource } from '../flightSources.ts';
import { GuideOffer } from '../guide/Guide.tsx';
import { Book } from '../logbook/Book.tsx';
import { FilePicker } from '../parts/FilePicker.tsx';
import { current, flights, keepInBook, openFlight } from '../state.ts';
import { inUnits } from '../units.ts';

function SourceLine({ flight }: { readonly flight: FlightSource }) {
  const shown = current.value?.source.id === flight.id;
  return (
    <li>
      <button type="button" class="flight" onClick={() => void openFlight(flight)}>
        <span class="flight-title">{flight.title}</span>
        {shown ? <span class="quiet"> on the review screen</span> : null}
        <span class="flight-note">{inUnits(flight.note)}</span>
      </button>
      {flight.origin === 'opened' ? (
        <button type="button" class="plain" onClick={() => void keepInBook(flight)}>
          Keep<span class="unseen"> {flight.title}</span> in the logbook
        </button>
      ) : null}
    </li>
  );
}

function SourceList({ sources }: { readonly sources: readonly FlightSource[] }) {
  return (
    <ul class="flight-list">
      {sources.map((f) => (
        <SourceLine key={f.id} flight={f} />
      ))}
    </ul>
  );
}

function SamplesHead() {
  return (
    <h2>
      Sample flights <span class="quiet">computed, worlds and rockets invented</span>
    </h2>
  );
}

/** `12 flights, 5 of them in orbit.` */
function bookLine(): string {
  const all = bookFlights.value;
  const inOrbit = all.filter((f) => f.summary.verdictCode === 'in-orbit').length;
  const count = all.length === 1 ? 'One flight' : `${all.length} flights`;
  if (inOrbit === 0) return `${count}, ${all.length === 1 ? 'not' : 'none'} in its target orbit.`;
  if (inOrbit === all.length)
    return `${count}, ${all.length === 1 ? 'in its' : 'all in their'} target orbit.`;
  return `${count}, ${inOrbit} in ${inOrbit === 1 ? 'its' : 'their'} target orbit.`;
}

/** The logbook of this browser, where a log is given and a flight is chosen. */
export function LogbookScreen() {
  const opened = flights.value.filter((f) => f.origin === 'opened');
  const samples = flights.value.filter((f) => f.origin === 'sample');
  const empty = bookFlights.value.length === 0;
  return (
    <div class="flights">
      <h1 tabIndex={-1}>{empty ? 'Give a flight log and read where its delta-v went.' : bookLine()}</h1>
      {empty ? (
        <p class="detail">
          What gravity, steering, drag and the air took, what was left, and when orbit went out of reach.
        </p>
      ) : null}
      <GuideOffer />
      <FilePicker />
      {opened.length === 0 ? null : (
        <section>
          <h2>Opened with the page</h2>
          <SourceList sources={opened} />
        </section>
      )}
      <Book />
      {samples.length === 0 ? null : empty ? (
        <section>
          <SamplesHead />
          <SourceList sources={samples} />
        </section>
      ) : (
        <section>
          <details class="samples">
            <summary>
              <SamplesHead />
            </summary>
            <SourceList sources={samples} />
          </details>
        </section>
      )}
    </div>
  );
}
