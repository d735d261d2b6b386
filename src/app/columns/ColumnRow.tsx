import type { ColumnSample } from '../../log/columnSample.ts';
import { quantityOf } from '../../log/quantities.ts';
import { type ChannelName, type ChannelReading, type ColumnChoice, channelNames } from '../../log/types.ts';
import { unitSpellings } from '../../units/units.ts';
import { inUnits } from '../units.ts';
import { sureness } from './choose.ts';
import { Sparkline } from './Sparkline.tsx';

export interface ColumnRowProps {
  readonly sample: ColumnSample;
  readonly reading: ChannelReading | null;
  readonly choice: ColumnChoice | null;
  readonly onChoose: (channel: ColumnChoice['channel'] | null, unit: string | null) => void;
}

const unitSources: Readonly<Record<ChannelReading['unitFrom'], string>> = {
  header: 'Unit: in the header.',
  'units-row': 'Unit: in the row of units.',
  inferred: 'Unit: inferred.',
  told: 'Unit: as you said.',
  assumed: 'Unit: assumed.',
};

/** `flightPathAngle` as words. */
function channelWords(channel: ChannelName): string {
  return channel.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function unitsFor(channel: ChannelName, present: string): readonly string[] {
  const units = unitSpellings(quantityOf[channel]);
  return present === '' || units.includes(present) ? units : [present, ...units];
}

/** One column of the file: what it was taken for and why, its first values and course, and how to say otherwise. */
export function ColumnRow({ sample, reading, choice, onChoose }: ColumnRowProps) {
  const taken = choice?.channel ?? reading?.channel ?? 'none';
  const channel = taken === 'none' ? null : taken;
  const unit = choice?.unit ?? reading?.unit ?? '';
  return (
    <tr class={channel === null ? 'unused' : ''}>
      <th scope="row">
        {sample.header}
        {sample.unitsCell === null ? null : <span class="unit"> {sample.unitsCell}</span>}
      </th>
      <td class="choose">
        <div>
          <select
            aria-label={`Channel of ${sample.header}`}
            onChange={(event) => {
              const next = event.currentTarget.value as ColumnChoice['channel'] | '';
              onChoose(next === '' ? null : next, null);
            }}
          >
            <option value="none" selected={channel === null}>
              not used
            </option>
            {channelNames.map((name) => (
              <option key={name} value={name} selected={name === channel}>
                {channelWords(name)}
              </option>
            ))}
            {choice === null ? null : <option value="">as the file says</option>}
          </select>
          {channel === null || quantityOf[channel] === 'text' ? null : (
            <select
              aria-label={`Unit of ${sample.header}`}
              onChange={(event) => onChoose(channel, event.currentTarget.value || null)}
            >
              {unit === '' ? (
                <option value="" selected>
                  as the file says
                </option>
              ) : null}
              {unitsFor(channel, unit).map((u) => (
                <option key={u} value={u} selected={u === unit}>
                  {u === '1' ? 'fraction' : u}
                </option>
              ))}
            </select>
          )}
        </div>
      </td>
      <td class="why">
        {reading === null ? (
          <span class="quiet">{choice === null ? 'no word that a channel goes by' : 'as you said'}</span>
        ) : (
          <>
            <span class={reading.confidence < 0.6 ? 'unsure' : ''}>{sureness(reading)}</span>
            <span class="quiet">
              {' '}
              {inUnits(reading.reason)}
              {quantityOf[reading.channel] === 'text' ? '' : ` ${unitSources[reading.unitFrom]}`}
              {reading.missing > 0 ? ` ${reading.missing} rows without a value.` : ''}
            </span>
          </>
        )}
      </td>
      <td class="first quiet">{sample.first.length === 0 ? 'empty' : sample.first.join(', ')}</td>
      <td class="course">
        <Sparkline shape={sample.shape} />
      </td>
    </tr>
  );
}
