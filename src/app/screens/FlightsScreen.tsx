import type { FlightSource } from '../flightSources.ts';
import { FilePicker } from '../parts/FilePicker.tsx';
import { current, flights, openFlight } from '../state.ts';

const groups = [
  { origin: 'opened', title: 'Opened with the page' },
  { origin: 'given', title: 'Given on this visit' },
  { origin: 'sample', title: 'Sample flights', note: 'computed, worlds and rockets invented' },
] as const;

function FlightLine({ flight }: { readonly flight: FlightSource }) {
  const shown = current.value?.source.id === flight.id;
  return (
    <li>
      <button type="button" class="flight" onClick={() => void openFlight(flight)}>
        <span class="flight-title">{flight.title}</span>
        {shown ? <span class="quiet"> on the review screen</span> : null}
        <span class="flight-note">{flight.note}</span>
      </button>
    </li>
  );
}

/** Where a log is given and a flight is chosen. */
export function FlightsScreen() {
  return (
    <div class="flights">
      <h1 tabIndex={-1}>Give a flight log and read where its delta-v went.</h1>
      <p class="detail">
        What gravity, steering, drag and the air took, what was left, and when orbit went out of reach.
      </p>
      <FilePicker />
      {groups.map((group) => {
        const members = flights.value.filter((f) => f.origin === group.origin);
        return members.length === 0 ? null : (
          <section key={group.origin}>
            <h2>
              {group.title}
              {'note' in group ? <span class="quiet"> {group.note}</span> : null}
            </h2>
            <ul class="flight-list">
              {members.map((f) => (
                <FlightLine key={f.id} flight={f} />
              ))}
            </ul>
          </section>
        );
      })}
    </div>
  );
}
