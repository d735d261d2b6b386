import { useId, useState } from 'preact/hooks';
import { worldNames, worldTitles } from '../../world/worldNames.ts';
import { entryText, readEntry } from '../card/entries.ts';
import { type SmallCard, smallCard, smallCardText } from '../card/smallCard.ts';
import { PartPicker } from '../columns/PartPicker.tsx';
import { go } from '../route.ts';
import { asking, current, reviewAgain } from '../state.ts';
import { altitudeIn } from '../units.ts';

/**
 * Reviews the flight with a card of these choices alone; a flight of the logbook keeps it.
 * @param flight that they were made for: another may have come meanwhile
 */
function choose(choice: SmallCard, flight: string): void {
  const open = current.peek();
  if (open?.source.id !== flight) return;
  const text = smallCardText(choice);
  const name = open.files.card?.name ?? `${open.source.title.replace(/\.[^.]*$/, '')}.mission.json`;
  void reviewAgain({ card: text === null ? null : { name, text } });
}

interface PickerProps {
  readonly choice: SmallCard;
  readonly flight: string;
}

function TargetPicker({ choice, flight, floor_m }: PickerProps & { readonly floor_m: number }) {
  const id = useId();
  const [writing, setWriting] = useState<string | null>(null);
  const { unit, scale } = altitudeIn();
  const value = writing ?? entryText(choice.targetAltitude_m ?? undefined, scale);
  const read = writing === null ? null : readEntry(writing, scale, 'length');
  const wrong = read !== null && read !== undefined && !(typeof read === 'number' && read > 0);
  const take = () => {
    if (writing === null || wrong) return;
    const targetAltitude_m = typeof read === 'number' ? read : null;
    setWriting(null);
    if (targetAltitude_m !== choice.targetAltitude_m) choose({ ...choice, targetAltitude_m }, flight);
  };
  return (
    <form
      class="pick-one"
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <label for={id}>
        Target orbit <span class="unit">{unit}</span>
      </label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        size={7}
        placeholder={entryText(floor_m, scale)}
        value={value}
        aria-invalid={wrong ? true : undefined}
        onInput={(event) => setWriting(event.currentTarget.value)}
        onBlur={take}
      />
    </form>
  );
}

/** World and target of a flight whose card does not say them, and which flight of its file it is. */
export function FlightChoices() {
  const open = current.value;
  if (open === null) return null;
  const choice = smallCard((asking.value ?? open).files.card?.text ?? null);
  const flight = open.source.id;
  const { mission, source } = open.analysis.review;
  if (choice === null && source.parts < 2) return null;
  return (
    <div class="flight-choices">
      <PartPicker />
      {choice === null ? null : (
        <>
          <WorldPicker choice={choice} flight={flight} />
          <TargetPicker key={flight} choice={choice} flight={flight} floor_m={mission.orbitFloor_m} />
          <button type="button" class="plain strong" onClick={() => go('card', { flight: open.source.id })}>
            Write a mission card
          </button>
        </>
      )}
    </div>
  );
}

function WorldPicker({ choice, flight }: PickerProps) {
  const id = useId();
  return (
    <span class="pick-one">
      <label for={id}>World</label>
      <select
        id={id}
        onChange={(event) => choose({ ...choice, world: event.currentTarget.value || null }, flight)}
      >
        <option value="" selected={choice.world === null}>
          not said
        </option>
        {worldNames.map((name) => (
          <option key={name} value={name} selected={name === choice.world?.toLowerCase()}>
            {worldTitles[name]}
          </option>
        ))}
      </select>
    </span>
  );
}
