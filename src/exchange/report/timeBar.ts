import type { Review } from '../../review/types.ts';
import { tickText, timeText } from '../readingText.ts';
import { type Drawing, draw, picture } from './drawing.ts';
import { eventLabels, eventWord } from './eventLabels.ts';
import { type PlotFrame, type Span, timeScale, timeTickCount } from './plotFrame.ts';
import { timeTicks } from './ticks.ts';

/** Mean width of a letter of 12 px text, px. */
const letter = 6.6;
const eventRow_px = 14;

/** The time axis with the phases of the flight under it, and the events on as many rows as they need, at most two. */
export function timeBar(review: Review, span: Span, frame: PlotFrame): Drawing {
  const x = timeScale(frame, span);
  const phases = review.phases
    .filter((p) => p.end_s > span.start_s && p.start_s < span.end_s)
    .map((p) => ({ ...p, from: Math.max(x(p.start_s), frame.left), to: Math.min(x(p.end_s), frame.right) }));
  const labels = eventLabels(review.events, x, frame, letter, 2);
  const rows = labels.reduce((most, l) => Math.max(most, (l.row ?? 0) + 1), 0);
  const told = phases.map((p) => `${p.label} ${timeText(p.start_s)} to ${timeText(p.end_s)}`).join(', ');
  const muted = { fill: 'var(--muted)' };
  return picture(
    frame.width,
    48 + eventRow_px * rows,
    `Phases: ${told === '' ? 'none told apart' : told}`,
    timeTicks(span.start_s, span.end_s, timeTickCount(frame)).map((t) =>
      draw(
        'text',
        // A number at the edge leans inward rather than out of the picture.
        {
          ...muted,
          x: Math.min(x(t), frame.width - 12),
          y: 14,
          'text-anchor': 'middle',
        },
        tickText(t),
      ),
    ),
    x(0) > frame.left + 12 || span.start_s > 0
      ? draw('text', { ...muted, x: frame.left - 8, y: 14, 'text-anchor': 'end' }, 's')
      : null,
    phases.flatMap((p, i) => [
      draw('rect', {
        x: p.from,
        y: 22,
        width: Math.max(0, p.to - p.from - 1),
        height: 19,
        fill: i % 2 === 0 ? 'var(--phase)' : 'var(--phase-other)',
      }),
      p.to - p.from > letter * p.label.length + 10 ? draw('text', { x: p.from + 6, y: 36 }, p.label) : null,
    ]),
    labels.flatMap(({ item, x: at, anchor, row }) => [
      draw('line', { x1: at, x2: at, y1: 41, y2: 47, stroke: 'var(--edge)' }),
      row === null
        ? null
        : draw(
            'text',
            {
              ...muted,
              x: at,
              y: 58 + eventRow_px * row,
              'text-anchor': anchor,
              'paint-order': 'stroke',
              stroke: 'var(--sheet)',
              'stroke-width': 3,
            },
            eventWord(item.name),
          ),
    ]),
  );
}
