import { isObject, type Json, type JsonObject, listAt, type Path, pathText, valueAt } from './cardDraft.ts';
import {
  airFields,
  airTableFields,
  boosterFields,
  escapeFields,
  flightFields,
  jettisonFields,
  limitFields,
  orbitFields,
  orbitMore,
  parachuteFields,
  peakFields,
  returnFields,
  siteFields,
  stageFields,
  stageMore,
  vehicleFields,
  worldFields,
} from './cardFields.ts';
import { broken, card, faultAt, setValue } from './cardState.ts';
import { Entries, Entry } from './Entry.tsx';
import { MemberList } from './MemberList.tsx';
import { Pick } from './Pick.tsx';

const worlds = {
  '': 'not said (Earth is assumed)',
  earth: 'Earth',
  moon: 'Moon',
  mars: 'Mars',
  own: 'a world of its own',
} as const;

const airs = {
  '': 'not said (none is assumed)',
  none: 'no air',
  exponential: 'exponential',
  'us-standard-1976': 'U.S. Standard Atmosphere, 1976',
  table: 'a table',
} as const;

const kinds = {
  '': 'not said (the lowest circular orbit)',
  orbit: 'an orbit',
  suborbital: 'a peak altitude',
  escape: 'an escape',
  landing: 'a landing',
} as const;

function worldOf(world: Json | undefined): string {
  if (isObject(world)) return 'own';
  const name = typeof world === 'string' ? world.toLowerCase() : '';
  return name in worlds ? name : '';
}

function World() {
  const world = valueAt(card.value, ['world']);
  const air = valueAt(world, ['atmosphere']);
  const model = isObject(air) ? String(air.model ?? '') : air === null ? 'none' : '';
  return (
    <fieldset class="part">
      <legend>World</legend>
      <Pick
        label="World"
        options={worlds}
        value={worldOf(world)}
        fault={faultAt('world')}
        onPick={(w) => setValue(['world'], w === 'own' ? { name: 'New world' } : w === '' ? undefined : w)}
      />
      {worldOf(world) === 'own' ? (
        <>
          <Entries fields={worldFields} at={['world']} />
          <Pick
            label="Air"
            options={airs}
            value={model}
            fault={faultAt('world.atmosphere')}
            onPick={(m) =>
              setValue(['world', 'atmosphere'], m === '' ? undefined : m === 'none' ? null : { model: m })
            }
          />
          {model === 'exponential' ? <Entries fields={airFields} at={['world', 'atmosphere']} /> : null}
          {model === 'table' ? <Entries fields={airTableFields} at={['world', 'atmosphere']} /> : null}
          <details>
            <summary>Ellipsoid</summary>
            <Entries
              fields={[
                {
                  key: 'equatorialRadius_m',
                  label: 'Equatorial radius',
                  unit: 'km',
                  scale: 1e-3,
                  quantity: 'length',
                },
                { key: 'flattening', label: 'Flattening' },
              ]}
              at={['world', 'ellipsoid']}
            />
          </details>
        </>
      ) : null}
    </fieldset>
  );
}

function Target() {
  const target = valueAt(card.value, ['target']);
  const kind = isObject(target) ? String(target.kind ?? 'orbit') : '';
  const at: Path = ['target'];
  return (
    <fieldset class="part">
      <legend>Target</legend>
      <Pick
        label="Target"
        options={kinds}
        value={kind}
        fault={faultAt('target') ?? faultAt('target.kind')}
        onPick={(k) => setValue(at, k === '' ? undefined : { kind: k })}
      />
      {kind === 'orbit' ? (
        <>
          <Entries fields={orbitFields} at={at} />
          <details>
            <summary>Which way it lies</summary>
            <Entries fields={orbitMore} at={at} />
          </details>
        </>
      ) : null}
      {kind === 'suborbital' ? <Entries fields={peakFields} at={at} /> : null}
      {kind === 'escape' ? <Entries fields={escapeFields} at={at} /> : null}
    </fieldset>
  );
}

function Fault({ at }: { readonly at: Path }) {
  const fault = faultAt(pathText(at));
  return fault === null ? null : <p class="entry-note fault">{fault}</p>;
}

function Vehicle() {
  const at: Path = ['vehicle'];
  const stages: Path = ['vehicle', 'stages'];
  const jettisons: Path = ['vehicle', 'jettisons'];
  return (
    <fieldset class="part">
      <legend>Vehicle</legend>
      <Entries fields={vehicleFields} at={at} />
      <MemberList
        at={stages}
        word="Stage"
        fresh={{}}
        ordered
        none="No stage yet: the first to burn comes first."
      >
        {(stage) => (
          <>
            <Fault at={stage} />
            <Entries fields={stageFields} at={stage} />
            <details open={hasAny(stage, stageMore)}>
              <summary>Drag, exit area, throttle, ignitions</summary>
              <Entries fields={stageMore} at={stage} />
            </details>
            <details open={listAt(card.value, [...stage, 'boosters']).length > 0}>
              <summary>Boosters beside this stage</summary>
              <MemberList at={[...stage, 'boosters']} word="Booster" fresh={{}}>
                {(booster) => <Entries fields={boosterFields} at={booster} />}
              </MemberList>
            </details>
          </>
        )}
      </MemberList>
      <details open={listAt(card.value, jettisons).length > 0}>
        <summary>Parts thrown off on the way (fairing, escape tower)</summary>
        <MemberList at={jettisons} word="Part" fresh={{}}>
          {(part) => (
            <>
              <Fault at={part} />
              <Entries fields={jettisonFields} at={part} />
            </>
          )}
        </MemberList>
      </details>
      <details>
        <summary>How sure these values are</summary>
        <Entries
          fields={[
            { key: 'isp', label: 'Isp', unit: '%' },
            { key: 'exitArea', label: 'Exit area', unit: '%' },
            { key: 'dragArea', label: 'Drag area', unit: '%' },
          ]}
          at={['vehicle', 'standardErrors_percent']}
        />
      </details>
    </fieldset>
  );
}

function hasAny(at: Path, fields: readonly { readonly key: string }[]): boolean {
  const member = valueAt(card.value, at) as JsonObject | undefined;
  return fields.some(({ key }) => member?.[key] !== undefined && member[key] !== null);
}

/** The card as a form, in the order in which a new one is filled in. */
export function CardForm() {
  const root: Path = [];
  return (
    <form class="card-form" aria-label="Mission card as a form" onSubmit={(event) => event.preventDefault()}>
      <fieldset class="whole" disabled={broken.value}>
        <legend class="unseen">Mission card</legend>
        <div class="form-column">
          <Entry field={{ key: 'mission', label: 'Mission', kind: 'text', wide: true }} at={root} />
          <World />
          <Target />
          <fieldset class="part">
            <legend>Launch site</legend>
            <Entries fields={siteFields} at={['site']} />
          </fieldset>
        </div>
        <div class="form-column">
          <Vehicle />
          <fieldset class="part">
            <legend>Limits</legend>
            <Entries fields={limitFields} at={['limits']} />
          </fieldset>
          <fieldset class="part">
            <legend>This flight</legend>
            <Entries fields={flightFields} at={['flight']} />
          </fieldset>
          <fieldset class="part">
            <legend>Return</legend>
            <Entries fields={returnFields} at={['return']} />
            <MemberList at={['return', 'parachutes']} word="Parachute" fresh={{}}>
              {(chute) => <Entries fields={parachuteFields} at={chute} />}
            </MemberList>
          </fieldset>
        </div>
      </fieldset>
    </form>
  );
}
