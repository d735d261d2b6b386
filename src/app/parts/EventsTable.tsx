import { numberText } from '../../exchange/figureText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import type { Review, ReviewEvent } from '../../review/types.ts';
import { cursor_s } from '../charts/timeFrame.ts';

function EventRow({ event, planned }: { readonly event: ReviewEvent; readonly planned: boolean }) {
  return (
    <tr
      onMouseEnter={() => {
        cursor_s.value = event.time_s;
      }}
      onMouseLeave={() => {
        cursor_s.value = null;
      }}
    >
      <th scope="row">
        {eventWord(event.name)}
        {event.subject === null ? null : <span class="quiet"> {event.subject}</span>}
      </th>
      <td class="number">{numberText(event.time_s, 1)}</td>
      {planned ? <td class="number">{numberText(event.planned_s, 1)}</td> : null}
      <td class="number">{numberText(event.altitude_m === null ? null : event.altitude_m / 1000, 1)}</td>
      <td class="number">{numberText(event.speed_m_s, 0)}</td>
    </tr>
  );
}

/** What happened when, with the state at each moment. */
export function EventsTable({ review }: { readonly review: Review }) {
  if (review.events.length === 0) return null;
  const planned = review.events.some((e) => e.planned_s !== null);
  return (
    <section class="events" aria-label="Events">
      <h2>
        Events <span class="quiet">from lift-off</span>
      </h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">event</th>
            <th scope="col" class="number">
              time <span class="unit">s</span>
            </th>
            {planned ? (
              <th scope="col" class="number">
                planned <span class="unit">s</span>
              </th>
            ) : null}
            <th scope="col" class="number">
              altitude <span class="unit">km</span>
            </th>
            <th scope="col" class="number">
              speed <span class="unit">m/s</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {review.events.map((e) => (
            <EventRow key={`${e.name} ${e.time_s} ${e.subject ?? ''}`} event={e} planned={planned} />
          ))}
        </tbody>
      </table>
    </section>
  );
}
