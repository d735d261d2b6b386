import { bookFlights } from '../book/book.ts';
import type { FlightSource } from '../flightSources.ts';
import { flights } from '../state.ts';
import { choiceGroups } from './choice.ts';

interface Props {
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (ids: ReadonlySet<string>) => void;
}

function without(from: ReadonlySet<string>, ids: readonly string[]): ReadonlySet<string> {
  const out = new Set(from);
  for (const id of ids) out.delete(id);
  return out;
}

/** Sample sets, each to be taken as a whole. */
function setsOf(sources: readonly FlightSource[]): readonly { name: string; ids: readonly string[] }[] {
  const names = [...new Set(sources.flatMap((s) => s.set ?? []))];
  return names.map((name) => ({ name, ids: sources.filter((s) => s.set === name).map((s) => s.id) }));
}

/** Flights of the logbook and samples, to be ticked one by one, by group or by set. */
export function Chooser({ chosen, onChoose }: Props) {
  const sources = flights.value;
  const groups = choiceGroups(sources, bookFlights.value);
  const kept = sources.filter((s) => s.origin === 'book').map((s) => s.id);
  const choose = (ids: readonly string[], on: boolean) =>
    onChoose(on ? new Set([...chosen, ...ids]) : without(chosen, ids));
  return (
    <div class="chooser">
      <p class="chooser-sets">
        {kept.length === 0 ? null : (
          <button type="button" class="plain strong" onClick={() => onChoose(new Set(kept))}>
            The whole logbook ({kept.length})
          </button>
        )}
        {setsOf(sources).map(({ name, ids }) => (
          <button key={name} type="button" class="plain strong" onClick={() => onChoose(new Set(ids))}>
            Sample set “{name}” ({ids.length})
          </button>
        ))}
        <button type="button" class="plain" disabled={chosen.size === 0} onClick={() => onChoose(new Set())}>
          None of them
        </button>
      </p>
      <div class="chooser-list">
        <div class="chooser-groups">
          {groups.map(({ heading, sources: members }) => {
            const ids = members.map((m) => m.id);
            const all = ids.every((id) => chosen.has(id));
            return (
              <fieldset key={heading}>
                <legend>{heading}</legend>
                {members.length < 2 ? null : (
                  <label class="all-of">
                    <input
                      type="checkbox"
                      checked={all}
                      onChange={(event) => choose(ids, event.currentTarget.checked)}
                    />
                    all {members.length}
                    <span class="unseen"> of {heading}</span>
                  </label>
                )}
                {members.map((m) => (
                  <label key={m.id}>
                    <input
                      type="checkbox"
                      checked={chosen.has(m.id)}
                      onChange={(event) => choose([m.id], event.currentTarget.checked)}
                    />
                    {m.title}
                  </label>
                ))}
              </fieldset>
            );
          })}
        </div>
      </div>
    </div>
  );
}
