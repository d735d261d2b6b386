import { LossbookError } from '../errors.ts';
import { type ColumnChoice, channelNames } from '../log/types.ts';
import { suggestion } from '../suggest.ts';

/**
 * Reads `CHANNEL=COLUMN[:UNIT]`; `none=COLUMN` leaves a column alone. The last colon parts column from unit; a column in double quotes may hold colons.
 * @throws LossbookError for another form or a channel that does not exist.
 */
export function columnChoice(text: string): ColumnChoice {
  const parts = /^\s*([^=]*?)\s*=(?:"([^"]+)"|(.+?))(?::([^:"]+))?$/su.exec(text);
  const [, channel = '', quoted, bare, unit] = parts ?? [];
  const column = quoted ?? bare;
  if (column === undefined) {
    throw new LossbookError('usage', {
      reason: `--map ${text} is not of the form CHANNEL=COLUMN[:UNIT]`,
      command: 'review',
    });
  }
  if (!isChannel(channel)) {
    throw new LossbookError('map-unknown-channel', {
      channel,
      suggestion: suggestion(channel, channelNames),
      channels: channelNames.join(', '),
    });
  }
  return { channel, column, unit: unit ?? null };
}

function isChannel(name: string): name is ColumnChoice['channel'] {
  return name === 'none' || (channelNames as readonly string[]).includes(name);
}
