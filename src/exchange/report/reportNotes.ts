import type { Review } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';
import { numberText } from '../figureText.ts';
import { sentence } from '../sentence.ts';
import { unavailableTexts } from '../unavailableText.ts';
import { cutText } from '../wrapText.ts';
import { type Drawing, draw } from './drawing.ts';
import { methodNotes } from './methodNotes.ts';
import { section, table } from './reportTables.ts';

function list(texts: readonly string[]): Drawing | null {
  if (texts.length === 0) return null;
  return draw(
    'ul',
    { class: 'notes' },
    [...new Set(texts)].map((text) => draw('li', {}, sentence(text))),
  );
}

/** What could not be had, what was assumed, what is wrong with the log. */
export function limitSections(review: Review): (Drawing | null)[] {
  const missing = review.derivation
    .filter((d) => d.basis === 'unavailable')
    .map((d) => `${d.quantity}: ${d.how}`);
  return [
    section('Could not be derived', '', list([...missing, ...unavailableTexts(review)])),
    section('Assumed', '', list(review.mission.assumed)),
    section('About the log', '', list(review.quality.map((q) => q.text))),
  ];
}

/** The log's own words, which are not put into other units. */
function asInFile(text: string): Drawing {
  return draw('span', { translate: 'no' }, text);
}

/** How each quantity was come by, how the columns were understood, and how the figures are defined. */
export function methodSections({ derivation, channels, source, mission }: Review): (Drawing | null)[] {
  const had = derivation.filter((d) => d.basis !== 'unavailable');
  const rate = formatFigure(source.rate_Hz, { digits: 3 });
  return [
    section(
      'Where the quantities come from',
      '',
      had.length === 0
        ? null
        : draw(
            'div',
            { class: 'words' },
            table(
              [
                { head: 'quantity', class: '' },
                { head: 'basis', class: 'quiet' },
                { head: 'how', class: '' },
              ],
              had.map((d) => [d.quantity, d.basis, d.how]),
            ),
          ),
    ),
    section(
      'How the log was understood',
      `${numberText(source.rows, 0)} rows, ${rate} Hz`,
      channels.length === 0
        ? null
        : draw(
            'div',
            { class: 'words' },
            table(
              [
                { head: 'channel', class: '' },
                { head: 'column', class: '' },
                { head: 'unit', class: '' },
                { head: 'why', class: 'quiet more' },
              ],
              channels.map((c) => [
                c.channel,
                asInFile(cutText(c.column, 40)),
                asInFile(c.unit === '1' ? 'fraction' : cutText(c.unit, 12)),
                c.reason,
              ]),
            ),
          ),
    ),
    section(
      'Method',
      `constants of ${mission.world}: ${mission.worldSource}`,
      draw(
        'dl',
        { class: 'notes' },
        methodNotes.flatMap(({ term, note }) => [draw('dt', {}, term), draw('dd', {}, note)]),
      ),
    ),
  ];
}
