import {
  assumptionTexts,
  shown as decimalsOf,
  intervalText,
  numberText,
  valueText,
} from '../../exchange/figureText.ts';
import { causes } from '../../exchange/report/causes.ts';
import { ledgerParts } from '../../exchange/report/ledgerParts.ts';
import { sentence } from '../../exchange/sentence.ts';
import type { Figure, FrameName, Review } from '../../review/types.ts';
import { timeText } from '../figureText.ts';
import { setView } from '../route.ts';
import { speedIn } from '../units.ts';
import { Term, TermsButton } from './Term.tsx';

const frames: readonly FrameName[] = ['ground', 'inertial'];

interface RowProps {
  readonly label: string;
  readonly swatch: string | null;
  readonly figure: Figure;
  readonly share: number | null;
  readonly basis: string;
}

function Row({ label, swatch, figure, share, basis }: RowProps) {
  const speed = speedIn();
  const form = decimalsOf(figure, speed.scale);
  const moves = assumptionTexts(figure, form);
  const looks = [swatch === null ? 'sum' : '', moves.length === 0 ? '' : 'explained'];
  return (
    <>
      <tr class={looks.join(' ').trim()}>
        <th scope="row">
          {swatch === null ? null : <span class={`swatch ${swatch}`} />}
          <Term label={label} />
        </th>
        {figure.value === null ? (
          <td class="absent" colSpan={4}>
            not available
          </td>
        ) : (
          <>
            <td class="number">{valueText(figure, form)}</td>
            <td class="number more quiet">{intervalText(figure, form)}</td>
            <td class="number more">{share === null ? '' : `${numberText(100 * share, 1)} %`}</td>
            <td class="more basis quiet">{basis}</td>
          </>
        )}
      </tr>
      {moves.length === 0 ? null : (
        <tr class="explanation">
          <td class="assumption" colSpan={5}>
            {moves.map((text) => `${text} ${speed.unit}`).join('; ')}
          </td>
        </tr>
      )}
    </>
  );
}

/** The ledger of METHODS §2, entry by entry, in the frame the reader chooses. */
export function LedgerTable({ review, frame }: { readonly review: Review; readonly frame: FrameName }) {
  const entries = review.ledger[frame];
  const { taken, given } = ledgerParts(entries);
  // Shares are of everything that was spent: without the whole there are none.
  const shareOf = (key: string) =>
    entries.ideal.value === null ? null : (taken.find((p) => p.cause.key === key)?.share ?? null);
  const { rotationHelp, headingReading, start_s, end_s } = review.ledger;
  const help = decimalsOf(rotationHelp, speedIn().scale);
  const shown = causes.filter(({ key }) => {
    if (key === 'frame' && frame === 'inertial') return false;
    return key !== 'holdDown' || entries.holdDown.value !== 0;
  });
  return (
    <section class="ledger" aria-label="Ledger">
      <div class="head-line">
        <h2>
          Ledger{' '}
          <span class="quiet">
            {speedIn().unit}, {timeText(start_s)} to {timeText(end_s)}
          </span>
        </h2>
        <TermsButton
          of="the ledger"
          labels={['ideal delta-v', ...shown.map((c) => c.label), '95 %', 'basis']}
        />
        <fieldset class="choice">
          <legend class="unseen">Frame of the ledger</legend>
          {frames.map((name) => (
            <label key={name}>
              <input
                type="radio"
                name="frame"
                checked={name === frame}
                onChange={() => setView({ frame: name === 'ground' ? null : name })}
              />
              {name}
            </label>
          ))}
        </fieldset>
      </div>
      <table class="figures">
        <thead class="unseen-head">
          <tr>
            <th scope="col">entry</th>
            <th scope="col" class="number">
              {speedIn().unit}
            </th>
            <th scope="col" class="number more">
              95 %
            </th>
            <th scope="col" class="number more">
              share
            </th>
            <th scope="col" class="more basis">
              basis
            </th>
          </tr>
        </thead>
        <tbody>
          <Row
            label="ideal, what the engines gave"
            swatch={null}
            figure={entries.ideal}
            share={null}
            basis={entries.ideal.basis}
          />
          {shown.map(({ key, label, swatch }) => (
            <Row
              key={key}
              label={label}
              swatch={swatch}
              figure={entries[key]}
              share={shareOf(key)}
              basis={key === 'unexplained' ? 'remainder' : entries[key].basis}
            />
          ))}
        </tbody>
      </table>
      <div class="under-table quiet">
        {given.every((p) => p.cause.key === 'unexplained') ? null : (
          <p>A figure below zero gave speed instead of taking it.</p>
        )}
        {rotationHelp.value === null ? null : (
          <p>
            Help from the world’s rotation, on top of the ground speed: {valueText(rotationHelp, help)}{' '}
            {speedIn().unit} {intervalText(rotationHelp, help)}
          </p>
        )}
        {headingReading === null ? null : <p>{sentence(headingReading)}</p>}
      </div>
    </section>
  );
}
