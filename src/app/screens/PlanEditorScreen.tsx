import { useEffect } from 'preact/hooks';
import { sentence, unbroken } from '../../exchange/sentence.ts';
import type { PlanAxis } from '../../plan/types.ts';
import { Pick } from '../card/Pick.tsx';
import { planFileName } from '../plan/planFile.ts';
import { planLine } from '../plan/planLine.ts';
import { ControlPanels } from '../planEditor/ControlPanels.tsx';
import { axisWords } from '../planEditor/columnForms.ts';
import { storeTrouble } from '../planEditor/draftStore.ts';
import {
  applied,
  changed,
  check,
  checking,
  chooseAxis,
  edit,
  empty,
  followCheck,
  followFlight,
  holdAgainst,
  keepWithFlight,
  planName,
  redoEdit,
  revert,
  said,
  settleEdit,
  sheet,
  text,
  undoEdit,
  unread,
} from '../planEditor/editorState.ts';
import { PlanCheckSide } from '../planEditor/PlanCheckSide.tsx';
import { PlanTable } from '../planEditor/PlanTable.tsx';
import { followPaste } from '../planEditor/pasteInto.ts';
import { RowTools, WayBack } from '../planEditor/RowTools.tsx';
import { StartFrom } from '../planEditor/StartFrom.tsx';
import '../planEditor/planEditor.css';
import { go, route } from '../route.ts';
import { saveFile } from '../saveFile.ts';
import { current, problem } from '../state.ts';
import { inUnits } from '../units.ts';

/** What can be done with the plan as it stands. */
function Actions() {
  const flight = current.value;
  const wrong = empty.value || checking.value || (check.value?.faults.length ?? 1) > 0;
  const kept = flight?.source.origin === 'book';
  return (
    <p class="card-actions">
      {flight === null ? null : (
        <button
          type="button"
          class="button"
          disabled={wrong || applied.value}
          onClick={() => void holdAgainst()}
        >
          Hold the flight against it
        </button>
      )}
      <button
        type="button"
        class={flight === null ? 'button' : 'button lesser'}
        disabled={empty.value}
        onClick={() => saveFile(planName.value, new Blob([text.value], { type: 'text/csv;charset=utf-8' }))}
      >
        Save<span class="unseen"> {planName.value}</span> as a file
      </button>
      {flight === null || kept ? null : (
        <button type="button" class="plain strong" disabled={wrong} onClick={() => void keepWithFlight()}>
          Keep flight and plan in the logbook
        </button>
      )}
      <button type="button" class="plain" disabled={!changed.value} onClick={revert}>
        Take the changes back
      </button>
    </p>
  );
}

/** What the flight came to, once it is held against this very plan. */
function Outcome() {
  const flight = current.value;
  const held = flight?.analysis.review.againstPlan ?? null;
  if (flight === null || held === null || !applied.value) return null;
  return (
    <p class="notice">
      The flight is held against this plan. {inUnits(planLine(held))}{' '}
      <button type="button" class="plain strong" onClick={() => go('plan', { flight: flight.source.id })}>
        See what differs
      </button>
    </p>
  );
}

/** What the editor did, and what it could not do. */
function Notes() {
  const failed = unread.value;
  return (
    <>
      <div role="status">
        {said.value.length === 0 ? null : <p class="notice">{said.value.map(inUnits).join(' ')}</p>}
        <Outcome />
      </div>
      <div role="alert">
        {storeTrouble.value === null ? null : <p class="problem">{storeTrouble.value}</p>}
        {failed === null ? null : (
          <p class="problem">
            The flight’s own plan does not stand here: {sentence(failed.what)} {sentence(failed.next)}
          </p>
        )}
      </div>
    </>
  );
}

function NameAndAxis() {
  const now = sheet.value;
  if (now === null) return null;
  return (
    <div class="entries name-axis">
      <div class="entry">
        <label for="plan-name">Name</label>
        <input
          id="plan-name"
          type="text"
          autocomplete="off"
          spellcheck={false}
          value={now.name.replace(/\.plan\.csv$/iu, '')}
          onInput={(event) =>
            edit({ ...now, name: planFileName(`${event.currentTarget.value.trim() || 'new'}.csv`) }, 'name')
          }
          onBlur={settleEdit}
        />
      </div>
      <Pick
        label="Laid out against"
        options={axisWords}
        value={now.axis}
        fault={null}
        onPick={(axis) => chooseAxis(axis as PlanAxis)}
      />
    </div>
  );
}

function onKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  const again = key === 'y' || (key === 'z' && event.shiftKey);
  if (!again && key !== 'z') return;
  event.preventDefault();
  if (again) redoEdit();
  else undoEdit();
}

/** The editor of the flight that the address names: what is written before that is open would be another's. */
export function PlanEditorScreen() {
  const asked = route.value.view.flight;
  const open = asked === undefined || asked === current.value?.source.id || problem.value !== null;
  return open ? <Editor /> : <h1 tabIndex={-1}>The plan’s flight is not open yet.</h1>;
}

/** A plan as a table that is written, checked and drawn at once. */
function Editor() {
  useEffect(followFlight, []);
  useEffect(followCheck, []);
  useEffect(followPaste, []);
  useEffect(() => {
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
  const flight = current.value;
  return (
    <div class="plan-editor">
      <h1 tabIndex={-1}>
        {flight === null
          ? 'A plan from scratch'
          : flight.files.plan === null
            ? `A plan for ${unbroken(flight.source.title)}`
            : `The plan of ${unbroken(flight.source.title)}`}
      </h1>
      <p class="detail">
        Pitch and throttle run in straight lines from row to row; two rows at one place make a step. A cell
        may stay empty.{' '}
        {flight === null
          ? 'Saved beside a log, NAME.plan.csv is taken for NAME.csv.'
          : flight.source.origin === 'book'
            ? 'The logbook keeps the plan with the flight once the flight is held against it.'
            : 'This flight is not in the logbook: save the plan, or keep both.'}
      </p>
      <Actions />
      <Notes />
      <StartFrom />
      <div class="plan-sides">
        <section aria-label="Rows">
          <NameAndAxis />
          <div class="tool-line">
            <RowTools />
            <WayBack />
          </div>
          <PlanTable />
          <p class="hint">
            Enter goes down, the arrows up and down. With Alt: the arrows move the row, Enter inserts one
            below, Delete takes it out. Ctrl Z undoes. Rows of a spreadsheet can be pasted into a cell, with
            or without their headings.
          </p>
        </section>
        <div class="plan-right">
          <ControlPanels />
          <PlanCheckSide />
        </div>
      </div>
    </div>
  );
}
