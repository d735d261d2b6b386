import type { Log } from '../log/types.ts';
import { numberText } from './figureText.ts';
import { headingText } from './headingText.ts';
import { inks } from './inks.ts';
import { notesText, readingsText } from './logText.ts';
import { missingChannels } from './missingChannels.ts';
import { plainDocument } from './plainDocument.ts';
import { plainText } from './plainText.ts';
import type { TextOptions } from './reviewText.ts';
import { wrapText } from './wrapText.ts';

/** What `lossbook check` says of a card or plan. */
export function checkedCardText(
  name: string,
  found: { readonly understood: readonly string[]; readonly missing: readonly string[] },
  options: TextOptions,
): string {
  const { understood, missing } = plainDocument(found);
  return paper(options, [
    [plainText(name), 'understood', points(understood, options)],
    ['Missing', '', points(missing, options)],
  ]);
}

/** What `lossbook check` says of a log: each column's reading, repairs, columns left alone, channels missing. */
export function checkedLogText(
  read: Pick<Log, 'source' | 'readings' | 'notes' | 'unusedColumns'>,
  options: TextOptions,
): string {
  const { source, readings, notes, unusedColumns } = plainDocument(read);
  const flights = source.parts > 1 ? `, ${source.parts} flights (--part picks one)` : '';
  return paper(options, [
    [
      source.name,
      `${numberText(source.rows, 0)} rows${flights}`,
      readingsText(readings, inks(options.colour)),
    ],
    ['Left alone', '', unusedColumns.length === 0 ? [] : wrapText(unusedColumns.join(', '), options.width)],
    ['The log itself', '', notesText(notes, options.width)],
    ['Missing', '', points(missingChannels(readings), options)],
  ]);
}

function points(texts: readonly string[], { width }: TextOptions): string[] {
  return texts.flatMap((text) => wrapText(`· ${text}`, width, '  '));
}

function paper(
  options: TextOptions,
  sections: readonly (readonly [string, string, readonly string[]])[],
): string {
  const ink = inks(options.colour);
  const told = sections.filter(([, , lines]) => lines.length > 0);
  const texts = told.map(([name, remark, lines]) =>
    [headingText(name, remark, ink, options.width), ...lines].join('\n'),
  );
  return `${texts.join('\n\n')}\n`;
}
