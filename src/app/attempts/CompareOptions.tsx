import { useId } from 'preact/hooks';
import { groupBys } from '../../attempts/types.ts';
import { scoreHeads } from '../../exchange/comparisonWords.ts';
import { route, setView } from '../route.ts';
import { current, flights } from '../state.ts';
import { groupByIn, scoreNames, scoresIn } from './choice.ts';
import { bestReference, planReference } from './compareFlights.ts';

/** What to group by, what to hold the attempts against, and which scores are columns. */
export function CompareOptions({ ids }: { readonly ids: readonly string[] }) {
  const by = useId();
  const against = useId();
  const { view } = route.value;
  const scores = scoresIn(view);
  const among = new Set(ids);
  const offered = flights.value.filter((f) => among.has(f.id));
  const others = flights.value.filter((f) => !among.has(f.id));
  const open = current.value;
  const planned = open !== null && open.analysis.review.againstPlan !== null;
  return (
    <div class="compare-options">
      <span class="pick-one">
        <label for={by}>Grouped by</label>
        <select
          id={by}
          onChange={(event) =>
            setView({ by: event.currentTarget.value === 'pilot' ? null : event.currentTarget.value })
          }
        >
          {groupBys.map((name) => (
            <option key={name} value={name} selected={name === groupByIn(view)}>
              {name}
            </option>
          ))}
        </select>
      </span>
      <span class="pick-one">
        <label for={against}>Held against</label>
        <select id={against} onChange={(event) => setView({ against: event.currentTarget.value || null })}>
          <option value="" selected={view.against === undefined}>
            the greatest margin
          </option>
          {planned ? (
            <option value={planReference} selected={view.against === planReference}>
              the plan of {open.source.title}
            </option>
          ) : null}
          <option value={bestReference} selected={view.against === bestReference}>
            the best ascent of this rocket
          </option>
          {offered.map((f) => (
            <option key={f.id} value={f.id} selected={f.id === view.against}>
              {f.title}
            </option>
          ))}
          {others.length === 0 ? null : (
            <optgroup label="flights that are not compared">
              {others.map((f) => (
                <option key={f.id} value={f.id} selected={f.id === view.against}>
                  {f.title}
                </option>
              ))}
            </optgroup>
          )}
        </select>
      </span>
      <fieldset class="score-choice">
        <legend>Columns</legend>
        {scoreNames.map((s) => (
          <label key={s}>
            <input
              type="checkbox"
              checked={scores.includes(s)}
              onChange={(event) => {
                const on = event.currentTarget.checked;
                setView({ scores: scoreNames.filter((n) => (n === s ? on : scores.includes(n))).join(',') });
              }}
            />
            {scoreHeads[s].head}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
