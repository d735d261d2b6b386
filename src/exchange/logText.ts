import type { ChannelReading, QualityNote } from '../log/types.ts';
import type { Inks } from './inks.ts';
import { textTable } from './textTable.ts';
import { cutText, wrapText } from './wrapText.ts';

const unitSources = {
  header: 'unit in the header',
  'units-row': 'unit in the units row',
  inferred: 'unit inferred',
  told: 'as told',
  assumed: 'unit assumed',
} as const satisfies Record<ChannelReading['unitFrom'], string>;

/** How each used column was understood: channel, column, unit, where the unit is from, how sure. */
export function readingsText(readings: readonly ChannelReading[], ink: Inks): string[] {
  return textTable(
    [
      { align: 'left' },
      { align: 'left' },
      { align: 'left' },
      { align: 'left', ink: ink.faint },
      { align: 'right', ink: ink.faint },
    ],
    [
      ['channel', 'column', 'unit', 'from', 'sure'],
      ...readings.map((r) => [
        r.channel,
        cutText(r.column, 22),
        cutText(r.unit, 8),
        r.unit === '' ? '' : unitSources[r.unitFrom],
        `${Math.round(r.confidence * 100)} %`,
      ]),
    ],
    ink.faint,
  );
}

/** Repairs and limits of the log, one paragraph each. */
export function notesText(notes: readonly QualityNote[], width: number): string[] {
  return notes.flatMap((note) => {
    const rows =
      note.rows === null
        ? null
        : note.rows[0] === note.rows[1]
          ? `row ${note.rows[0]}`
          : `rows ${note.rows[0]}–${note.rows[1]}`;
    const where = [note.channel, rows].filter((part) => part !== null).join(', ');
    return wrapText(`· ${where === '' ? '' : `${where}: `}${note.text}`, width, '  ');
  });
}
