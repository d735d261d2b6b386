import { useEffect, useState } from 'preact/hooks';
import { comparisonHeading } from '../../exchange/comparisonWords.ts';
import { sentence } from '../../exchange/sentence.ts';
import { AttemptCurves } from '../attempts/AttemptCurves.tsx';
import { BestPhases, Habits, Partings, Progress, Relations } from '../attempts/AttemptSections.tsx';
import { AttemptsTable } from '../attempts/AttemptsTable.tsx';
import { Chooser } from '../attempts/Chooser.tsx';
import { CompareOptions } from '../attempts/CompareOptions.tsx';
import { ComparisonActions } from '../attempts/ComparisonActions.tsx';
import { chosenIn, chosenText, groupByIn, scoresIn } from '../attempts/choice.ts';
import {
  compared,
  compareFlights,
  comparing,
  comparisonKey,
  notCompared,
  stopComparing,
} from '../attempts/compareFlights.ts';
import { StitchedBest } from '../attempts/StitchedBest.tsx';
import { InTurn } from '../charts/InTurn.tsx';
import { route, setView } from '../route.ts';
import { flights, listed } from '../state.ts';
import { inUnits } from '../units.ts';

function Working() {
  const now = comparing.value;
  return (
    <div role="status">
      {now === null ? null : (
        <div class="working">
          <p>
            <strong>
              Flight {Math.min(now.done + 1, now.total)} of {now.total}
            </strong>
            : {now.text} …
          </p>
          <progress value={now.done} max={now.total} aria-label="Flights reviewed" />
          <button type="button" class="plain" onClick={stopComparing}>
            Stop comparing
          </button>
        </div>
      )}
    </div>
  );
}

function NotCompared() {
  const failed = notCompared.value;
  if (failed.length === 0) return null;
  return (
    <div class="problem">
      <p>{failed.length === 1 ? 'One flight is' : `${failed.length} flights are`} not among them:</p>
      <ul>
        {failed.map(({ title, failure }) => (
          <li key={title}>
            <strong>{title}</strong>: {sentence(failure.what)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Flights side by side: what was reached, where the ways part, what the pilots do. */
export function AttemptsScreen() {
  const { view } = route.value;
  const standing = compared.value;
  const comparison = standing?.comparison ?? null;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(
    () => new Set(view.flights === undefined ? (standing?.ids ?? []) : chosenIn(view)),
  );
  const [choosing, setChoosing] = useState(comparison === null && view.flights === undefined);
  const by = groupByIn(view);
  const against = view.against ?? null;
  const offered = flights.value;
  const run = (ids: ReadonlySet<string>) => {
    const sources = offered.filter((f) => ids.has(f.id));
    if (sources.length === 0) return;
    setView({ flights: chosenText(sources.map((s) => s.id)) });
    setChoosing(false);
    void compareFlights(sources, by, against);
  };
  // What the address asks for is compared as soon as all flights are known; another grouping at once.
  const known = offered.filter((f) => chosen.has(f.id)).length;
  const asked = comparisonKey(by, against);
  const wanted = listed.value && known > 0 && !choosing && standing?.key !== asked;
  useEffect(() => {
    if (wanted) run(chosen);
  }, [asked, wanted]);
  return (
    <div class="further attempts-screen">
      <h1 tabIndex={-1}>
        {comparison === null ? 'Choose flights to set side by side.' : inUnits(comparisonHeading(comparison))}
      </h1>
      {comparison === null ? (
        <p class="detail">
          Flights of the logbook and samples, by the same pilot or by several: what each reached and lost,
          where their ways part, what their pilots do alike, and whether they get better.
        </p>
      ) : null}
      <details
        class="choose-flights"
        open={choosing}
        onToggle={(event) => setChoosing(event.currentTarget.open)}
      >
        <summary>Choose flights ({chosen.size} chosen)</summary>
        <Chooser chosen={chosen} onChoose={setChosen} />
      </details>
      <div class="plan-actions">
        <button type="button" class="button" disabled={known === 0} onClick={() => run(chosen)}>
          {known === 0 ? 'Compare flights' : known === 1 ? 'Show one flight' : `Compare ${known} flights`}
        </button>
      </div>
      <Working />
      <NotCompared />
      {comparison === null || standing === null ? null : (
        <div class="compared">
          <CompareOptions ids={standing.ids} />
          <AttemptsTable comparison={comparison} scores={scoresIn(view)} />
          <ComparisonActions comparison={comparison} />
          <InTurn>
            <AttemptCurves comparison={comparison} />
          </InTurn>
          <InTurn>
            <Partings comparison={comparison} />
            <Habits comparison={comparison} />
            <div class="pair">
              <div>
                <BestPhases comparison={comparison} />
                <Progress comparison={comparison} />
              </div>
              <div>
                <Relations comparison={comparison} />
              </div>
            </div>
          </InTurn>
          <InTurn>
            <StitchedBest comparison={comparison} />
          </InTurn>
        </div>
      )}
    </div>
  );
}
