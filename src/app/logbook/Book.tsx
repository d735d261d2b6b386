import { useState } from 'preact/hooks';
import { bookFlights } from '../book/book.ts';
import { route } from '../route.ts';
import { groupFlights, search, sortFlights } from './arrange.ts';
import { BookTools, groupOf, sortOf } from './BookTools.tsx';
import { FlightLine } from './FlightLine.tsx';
import { UndoLine } from './UndoLine.tsx';

/** The flights of the logbook, searched, sorted and grouped. */
export function Book() {
  const [sought, setSought] = useState('');
  const all = bookFlights.value;
  const { view } = route.value;
  const found = search(all, sought);
  const groups = groupFlights(sortFlights(found, sortOf(view)), groupOf(view));
  return (
    <section class="book" aria-label="Logbook">
      {all.length === 0 ? null : <BookTools sought={sought} onSearch={setSought} />}
      <UndoLine />
      {all.length === 0 ? null : (
        <>
          <p class="found" role="status">
            {sought.trim() === '' ? '' : `${found.length} of ${all.length} flights`}
          </p>
          <p class="line-heads" aria-hidden="true">
            <span>flight</span>
            <span>pilot</span>
            <span>vehicle</span>
            <span>flown</span>
            <span class="number">attempt</span>
            <span>outcome</span>
            <span class="number">margin</span>
          </p>
          {groups.map(({ heading, flights }) => (
            <div key={heading} class="group">
              {heading === '' ? null : (
                <h2>
                  {heading} <span class="quiet">{flights.length}</span>
                </h2>
              )}
              <ul class="lines" aria-label={heading === '' ? 'Flights' : `Flights of ${heading}`}>
                {flights.map((f) => (
                  <FlightLine key={f.id} flight={f} />
                ))}
              </ul>
            </div>
          ))}
        </>
      )}
    </section>
  );
}
