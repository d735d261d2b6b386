import type { ColumnSample } from '../../log/columnSample.ts';
import type { ChannelReading, ColumnChoice } from '../../log/types.ts';

/** How a column is named in a choice: by its header, or by its number where others have the same. */
export function columnName(columns: readonly Pick<ColumnSample, 'header'>[], index: number): string {
  const plain = (text: string) => text.trim().replace(/\s+/gu, ' ').toLowerCase();
  const header = columns[index]?.header ?? '';
  const same = columns.filter((c) => plain(c.header) === plain(header));
  return same.length === 1 && header.trim() !== '' ? header : `#${index + 1}`;
}

/** The choice that was made for a column; null where the log's own words decide. */
export function choiceFor(
  columns: readonly Pick<ColumnSample, 'header'>[],
  index: number,
  map: readonly ColumnChoice[],
): ColumnChoice | null {
  const names = [columns[index]?.header, columnName(columns, index)];
  return map.find((c) => names.includes(c.column)) ?? null;
}

/**
 * The choices with a column's own changed: each channel goes to one column, each column to one channel.
 * @param channel null: as the log's own words say
 */
export function withChoice(
  columns: readonly Pick<ColumnSample, 'header'>[],
  index: number,
  map: readonly ColumnChoice[],
  channel: ColumnChoice['channel'] | null,
  unit: string | null,
): readonly ColumnChoice[] {
  const before = choiceFor(columns, index, map);
  const rest = map.filter((c) => c !== before && (channel === 'none' || c.channel !== channel));
  return channel === null ? rest : [...rest, { channel, column: columnName(columns, index), unit }];
}

/** How sure a reading is, in a word. */
export function sureness({ confidence, unitFrom }: Pick<ChannelReading, 'confidence' | 'unitFrom'>): string {
  if (confidence >= 1 && unitFrom === 'told') return 'as you said';
  const percent = `${Math.round(100 * confidence)} %`;
  if (confidence >= 0.85) return `sure, ${percent}`;
  return confidence >= 0.6 ? `likely, ${percent}` : `unsure, ${percent}: look at it`;
}
