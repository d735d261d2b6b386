import { useId } from 'preact/hooks';
import { WorkLine } from '../parts/WorkLine.tsx';
import { go } from '../route.ts';
import { current, flights } from '../state.ts';
import {
  startBlank,
  startFromBest,
  startFromFile,
  startFromOther,
  startFromThis,
  startFromTurn,
  working,
} from './starts.ts';

/** Where the rows of a plan can come from. What stood there before is one step back. */
export function StartFrom() {
  const picker = useId();
  const flight = current.value;
  const card = flight?.files.card ?? null;
  const others = flights.value.filter((f) => f.id !== flight?.source.id);
  const busy = working.value;
  return (
    <section class="start-from" aria-label="Start from">
      <h2>
        Start from <span class="quiet">takes the place of the rows below; Undo brings those back</span>
      </h2>
      <div class="start-choices">
        <button type="button" class="plain strong" onClick={startBlank}>
          Empty rows
        </button>
        <button type="button" class="plain strong" onClick={startFromTurn}>
          A gravity turn (invented)
        </button>
        {flight === null ? null : (
          <button type="button" class="plain strong" onClick={() => void startFromThis()}>
            This flight as flown
          </button>
        )}
        {flight === null ? null : card === null ? (
          <button type="button" class="plain strong" onClick={() => go('card', { flight: flight.source.id })}>
            Write a mission card, to search the best ascent
          </button>
        ) : (
          <button type="button" class="plain strong" onClick={() => void startFromBest(card)}>
            The best ascent
          </button>
        )}
        <span class="pick">
          <input
            id={picker}
            type="file"
            accept=".csv,.tsv,.txt,.json,.gz"
            onChange={(event) => {
              const [file] = [...(event.currentTarget.files ?? [])];
              event.currentTarget.value = '';
              if (file !== undefined) void startFromFile(file);
            }}
          />
          <label class="plain strong" for={picker}>
            A file
          </label>
        </span>
        {others.length === 0 ? null : (
          <label class="other-start">
            <span class="unseen">Another flight’s controls</span>
            <select
              value=""
              onChange={(event) => {
                const chosen = others.find((f) => f.id === event.currentTarget.value);
                event.currentTarget.value = '';
                if (chosen !== undefined) void startFromOther(chosen);
              }}
            >
              <option value="">Another flight …</option>
              {others.map((f) => (
                <option key={f.id} value={f.id}>
                  {f.title}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <div role="status">{busy === null ? null : <WorkLine {...busy} onStop={busy.stop} />}</div>
    </section>
  );
}
