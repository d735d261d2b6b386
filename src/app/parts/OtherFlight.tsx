import { useEffect, useState } from 'preact/hooks';
import { overlayOf } from '../../exchange/report/overlay.ts';
import { askWhile, createAnalyst } from '../analyst.ts';
import { otherFlight } from '../charts/overlays.ts';
import type { FlightSource } from '../flightSources.ts';
import { reviewRequest } from '../reviewRequest.ts';
import { route, setView } from '../route.ts';
import { current, flights } from '../state.ts';

/** Flights that can stand behind the one that is shown. */
function offered(): readonly FlightSource[] {
  const shown = current.value?.source.id;
  return flights.value.filter((f) => f.id !== shown);
}

/** Puts another flight's curves behind those of the flight that is shown; the address keeps which. */
export function OtherFlight() {
  const [state, setState] = useState<'' | 'working' | 'failed'>('');
  const list = offered();
  const wanted = list.find((f) => f.id === route.value.view.behind);

  useEffect(() => {
    otherFlight.value = null;
    setState('');
    if (wanted === undefined) return;
    const analyst = createAnalyst();
    let left = false;
    const ask = askWhile(analyst, () => !left);
    setState('working');
    wanted
      .load()
      .then((files) => ask('review', reviewRequest(wanted.id, files)))
      .then(
        ({ analysis }) => {
          if (left) return;
          otherFlight.value = overlayOf(wanted.title, analysis);
          setState('');
          analyst.stop();
        },
        () => {
          if (!left) setState('failed');
        },
      );
    return () => {
      left = true;
      analyst.stop();
      otherFlight.value = null;
    };
  }, [wanted?.id]);

  if (list.length === 0) return null;
  return (
    <p class="other-flight">
      <label>
        Behind the curves{' '}
        <select
          value={wanted?.id ?? ''}
          onChange={(e) => setView({ behind: e.currentTarget.value === '' ? null : e.currentTarget.value })}
        >
          <option value="">no other flight</option>
          {list.map((f) => (
            <option key={f.id} value={f.id}>
              {f.title}
            </option>
          ))}
        </select>
      </label>
      <span role="status" class="quiet">
        {state === 'working' ? ' working it out …' : state === 'failed' ? ' It could not be reviewed.' : ''}
      </span>
    </p>
  );
}
