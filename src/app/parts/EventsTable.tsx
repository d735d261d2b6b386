import { numberText } from '../../exchange/figureText.ts';
import { timeOrigin } from '../../exchange/readingText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import type { Review, ReviewEvent } from '../../review/types.ts';
import { cursor_s } from '../charts/timeFrame.ts';
import { altitudeIn, speedIn } from '../units.ts';

function EventRow({ event, planned }: { readonly event: ReviewEvent; readonly planned: boolean }) {
  const altitude = altitudeIn();
  const speed = speedIn();
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
      {planned ? <td class="number more">{numberText(event.planned_s, 1)}</td> : null}
      <td class="number">
        {numberText(
          event.altitude_m === null ? null : event.altitude_m * altitude.scale,
          altitude.unit === 'km' ? 1 : 0,
        )}
      </td>
      <td class="number">{numberText(event.speed_m_s === null ? null : event.speed_m_s * speed.scale, 0)}</td>
    </tr>
  );
}

/** More events than these stand in two tables side by side. */
const longList = 14;

/** True where the events take the whole width. */
export function eventsAreMany({ events }: Review): boolean {
  return events.length > longList;
}

/** What happened when, with the state at each moment. */
export function EventsTable({ review }: { readonly review: Review }) {
  const { events } = review;
  if (events.length === 0) return null;
  const half = eventsAreMany(review) ? Math.ceil(events.length / 2) : events.length;
  const parts = [events.slice(0, half), events.slice(half)].filter((part) => part.length > 0);
  return (
    <section class="events" aria-label="Events">
      <h2>
        Events <span class="quiet">from {timeOrigin(review)}</span>
      </h2>
      <div class={parts.length === 1 ? '' : 'pair halves'}>
        {parts.map((part) => (
          <EventsPart
            key={part[0]?.time_s}
            events={part}
            planned={events.some((e) => e.planned_s !== null)}
          />
        ))}
      </div>
    </section>
  );
}

function EventsPart({
  events,
  planned,
}: {
  readonly events: readonly ReviewEvent[];
  readonly planned: boolean;
}) {
  return (
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">event</th>
          <th scope="col" class="number">
            time <span class="unit">s</span>
          </th>
          {planned ? (
            <th scope="col" class="number more">
              planned <span class="unit">s</span>
            </th>
          ) : null}
          <th scope="col" class="number">
            altitude <span class="unit">{altitudeIn().unit}</span>
          </th>
          <th scope="col" class="number">
            speed <span class="unit">{speedIn().unit}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {events.map((e) => (
          <EventRow key={`${e.name} ${e.time_s} ${e.subject ?? ''}`} event={e} planned={planned} />
        ))}
      </tbody>
    </table>
  );
}
