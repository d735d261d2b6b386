import { useEffect } from 'preact/hooks';
import { unbroken } from '../../exchange/sentence.ts';
import { CardCheckSide } from '../card/CardCheckSide.tsx';
import { CardForm } from '../card/CardForm.tsx';
import { CardTextSide } from '../card/CardTextSide.tsx';
import {
  apply,
  broken,
  cardName,
  changed,
  check,
  followCheck,
  restored,
  revert,
  text,
} from '../card/cardState.ts';
import { VehiclePanel } from '../card/VehiclePanel.tsx';
import { route } from '../route.ts';
import { saveFile } from '../saveFile.ts';
import { current, job } from '../state.ts';

/** The mission card: form and text of the same card side by side, with what its reader makes of it. */
export function CardScreen() {
  const open = current.value;
  useEffect(followCheck, []);
  // A flight that the address names is still being read: its card is not the one from scratch.
  if (open === null && job.value !== null && route.value.view.flight !== undefined)
    return <p class="detail">The flight is being read; its card comes with it.</p>;
  const wrong = (check.value?.faults.length ?? 0) > 0 || broken.value;
  return (
    <div class="card-screen">
      <h1 tabIndex={-1}>
        {open === null
          ? 'A mission card from scratch'
          : open.files.card === null
            ? `A mission card for ${unbroken(open.source.title)}`
            : `Mission card of ${unbroken(open.source.title)}`}
      </h1>
      <p class="detail">
        {open === null
          ? 'Fill in what you know and save it beside a log: NAME.mission.json is taken for NAME.csv. Every field may stay empty.'
          : open.source.origin === 'book'
            ? 'Every field may stay empty. The card is kept with the flight in the logbook once the flight is reviewed with it.'
            : 'Every field may stay empty. This flight is not in the logbook: save the card to keep it.'}
      </p>
      <p class="card-actions">
        {open === null ? null : (
          <button
            type="button"
            class="button"
            disabled={wrong || !changed.value}
            onClick={() => void apply()}
          >
            Review the flight with it
          </button>
        )}
        <button
          type="button"
          class={open === null ? 'button' : 'button lesser'}
          onClick={() => saveFile(cardName.value, new Blob([text.value], { type: 'application/json' }))}
        >
          Save {cardName.value}
        </button>
        <button type="button" class="plain" disabled={!changed.value} onClick={revert}>
          Take the changes back
        </button>
      </p>
      <div role="status">
        {restored.value ? (
          <p class="notice">
            Edits that were left here unapplied are back.{' '}
            <button type="button" class="plain strong" onClick={revert}>
              Discard them
            </button>
          </p>
        ) : null}
      </div>
      <div class="card-sides">
        <CardForm />
        <div class="card-right">
          <CardCheckSide />
          <CardTextSide />
          {open === null ? null : <VehiclePanel analysis={open.analysis} />}
        </div>
      </div>
    </div>
  );
}
