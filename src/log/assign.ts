import { LossbookError } from '../errors.ts';
import { suggestion } from '../suggest.ts';
import { findUnit, type Unit, unitSpellings } from '../units/units.ts';
import { channelMatches } from './channelMatch.ts';
import { quantityOf } from './quantities.ts';
import type { RawColumn, RawTable } from './rawTable.ts';
import { finiteCount } from './statistics.ts';
import { type ChannelName, type ColumnChoice, channelNames } from './types.ts';

/** A column with the channel it carries; the unit is null where neither header nor user names it. */
export interface Assigned {
  readonly channel: ChannelName;
  readonly columnIndex: number;
  readonly column: RawColumn;
  readonly unit: Unit | null;
  readonly unitFrom: 'header' | 'units-row' | 'told' | null;
  readonly confidence: number;
  readonly why: string;
}

/**
 * Gives each channel at most one column and each column at most one channel: the user's choices first, then
 * the best match of header words. The order of the columns in the file decides nothing but exact ties.
 * @throws LossbookError for a choice that names an unknown channel, column or unit.
 */
export function assignColumns(table: RawTable, map: readonly ColumnChoice[], file: string): Assigned[] {
  const chosen = map.map((choice) => told(table, choice, file));
  const assigned = chosen.filter((a): a is Assigned => a.channel !== 'none');
  const usedColumns = new Set(chosen.map((a) => a.columnIndex));
  const usedChannels = new Set<ChannelName>(assigned.map((a) => a.channel));
  const candidates = table.columns.flatMap((column, columnIndex) =>
    usedColumns.has(columnIndex) || !table.named
      ? []
      : channelMatches(column.header, column.unitsCell)
          .filter((match) => match.confidence > 0.25 && canCarry(column, match.channel))
          .map((match) => ({
            ...match,
            column,
            columnIndex,
            merit: match.confidence + (match.unit === null ? 0 : 0.02),
          })),
  );
  const counts = new Map<RawColumn, number>();
  const filledOf = (column: RawColumn): number => {
    const count = counts.get(column) ?? filledCount(column);
    counts.set(column, count);
    return count;
  };
  candidates.sort(
    (a, b) =>
      b.merit - a.merit ||
      filledOf(b.column) - filledOf(a.column) ||
      (a.column.header < b.column.header ? -1 : a.column.header > b.column.header ? 1 : 0) ||
      a.columnIndex - b.columnIndex,
  );
  for (const match of candidates) {
    if (usedColumns.has(match.columnIndex) || usedChannels.has(match.channel)) continue;
    usedColumns.add(match.columnIndex);
    usedChannels.add(match.channel);
    assigned.push({
      channel: match.channel,
      columnIndex: match.columnIndex,
      column: match.column,
      unit: match.unit,
      unitFrom: match.unitFrom,
      confidence: match.confidence,
      why: `the header says “${match.words.join(' ')}”`,
    });
  }
  return assigned.sort((a, b) => channelNames.indexOf(a.channel) - channelNames.indexOf(b.channel));
}

function filledCount(column: RawColumn): number {
  return column.texts.size + finiteCount(column.numbers);
}

/** Events are words, time may be a clock in words, everything else needs numbers. */
function canCarry(column: RawColumn, channel: ChannelName): boolean {
  if (channel === 'event') return column.texts.size > 0;
  const texts = column.texts.size;
  if (channel === 'time' && texts > 0) return true;
  if (channel === 'stage' && texts > 0) return true;
  return column.numbers.some((x) => !Number.isNaN(x)) || texts > 0.5 * column.numbers.length;
}

type Told = Omit<Assigned, 'channel'> & { readonly channel: ColumnChoice['channel'] };

function told(table: RawTable, choice: ColumnChoice, file: string): Told {
  const { channel } = choice;
  if (channel !== 'none' && !channelNames.includes(channel)) {
    throw new LossbookError('map-unknown-channel', {
      channel,
      suggestion: suggestion(channel, channelNames),
      channels: channelNames.join(', '),
    });
  }
  const columnIndex = findColumn(table, choice.column);
  const column = table.columns[columnIndex];
  if (column === undefined) {
    const headers = table.columns.map((c) => c.header);
    throw new LossbookError(
      'map-unknown-column',
      { column: choice.column, suggestion: suggestion(choice.column, headers), columns: headers.join(', ') },
      { file },
    );
  }
  const quantity = channel === 'none' ? 'text' : quantityOf[channel];
  const unit = choice.unit === null ? null : findUnit(quantity, choice.unit);
  if (choice.unit !== null && unit === null && quantity !== 'text') {
    const units = unitSpellings(quantity);
    throw new LossbookError('map-unknown-unit', {
      unit: choice.unit,
      quantity,
      suggestion: suggestion(choice.unit, units),
      units: units.join(', '),
    });
  }
  const own = channelMatches(column.header, column.unitsCell).find((match) => match.channel === channel);
  return {
    channel,
    columnIndex,
    column,
    unit: unit ?? own?.unit ?? null,
    unitFrom: unit !== null ? 'told' : (own?.unitFrom ?? null),
    confidence: 1,
    why: 'as told',
  };
}

/** By header as written, else without regard to case and blanks, else by number (`#3`). */
function findColumn(table: RawTable, wanted: string): number {
  const exact = table.columns.findIndex((column) => column.header === wanted);
  if (exact >= 0) return exact;
  const plain = (text: string): string => text.trim().replace(/\s+/gu, ' ').toLowerCase();
  const loose = table.columns.findIndex((column) => plain(column.header) === plain(wanted));
  if (loose >= 0) return loose;
  const number = /^#(\d+)$/u.exec(wanted.trim())?.[1];
  return number === undefined ? -1 : Number(number) - 1;
}
