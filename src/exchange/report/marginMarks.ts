import { readingText, timeText } from '../readingText.ts';
import { type Drawing, draw } from './drawing.ts';
import { type CurveEnds, type HeroCurve, momentText } from './heroCurve.ts';
import { letter, mark } from './marginLabel.ts';
import type { PlotFrame, Span } from './plotFrame.ts';

export interface Markings {
  readonly curve: HeroCurve;
  readonly ends: CurveEnds;
  readonly span: Span;
  readonly frame: PlotFrame;
  /** True where a plan's margin stands behind. */
  readonly withPlan: boolean;
  /** Top of the plot, px. */
  readonly top: number;
  readonly lost: number | null;
  readonly x: (t: number) => number;
  readonly y: (v: number) => number;
  readonly bottom: number;
}

/** Start, lost moment and end with their words, none over another. */
export function markings(chart: Markings): Drawing[] {
  const { curve, ends, span, frame, lost, x, y, bottom } = chart;
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
  const drawn: Drawing[] = [];
  const startValue = `${readingText(ends.first.value)} m/s`;
  const startMoment = momentText(ends.first.time_s);
  const startLabels = [
    ...(curve.kind === 'margin' && ends.first.value >= 0 ? [`${startValue} to spare ${startMoment}`] : []),
    `${startValue} ${startMoment}`,
  ];
  const startX = x(ends.first.time_s) + 8;
  const lostLabel = lost === null ? '' : `${curve.goal} out of reach from ${timeText(lost)}`;
  const lostX = lost === null ? 0 : x(lost);
  const lostRight = lostX + 8 + letter * lostLabel.length <= frame.right;
  const lostLeftEdge = lostRight ? lostX : lostX - 8 - letter * lostLabel.length;
  // The longest wording that stays clear of the lost moment's label. Where none does, that label goes down to its
  // point, where nothing else is; with a plan near there, the start's goes on a row of its own.
  const fitting = startLabels.find(
    (label) => lost === null || startX + letter * label.length < lostLeftEdge - 10,
  );
  const crowded = fitting === undefined;
  const atPoint = crowded && !chart.withPlan;
  if (lost !== null) {
    drawn.push(
      draw('line', {
        x1: lostX,
        x2: lostX,
        y1: atPoint ? chart.top : 10,
        y2: bottom,
        stroke: 'var(--short)',
      }),
      draw('circle', {
        cx: lostX,
        cy: y(0),
        r: 4.5,
        fill: 'var(--sheet)',
        stroke: 'var(--short)',
        'stroke-width': 2,
      }),
      draw(
        'text',
        {
          ...mark,
          fill: 'var(--short)',
          x: lostRight ? lostX + 8 : lostX - 8,
          y: atPoint ? y(0) - 12 : 24,
          'text-anchor': lostRight ? 'start' : 'end',
        },
        lostLabel,
      ),
    );
  }
  if (inside(ends.first.time_s)) {
    const y0 = crowded && !atPoint ? 42 : 24;
    drawn.push(
      draw('text', { ...mark, fill: 'var(--ink)', x: startX, y: y0 }, fitting ?? startLabels[0] ?? ''),
    );
  }
  if (inside(ends.last.time_s)) drawn.push(...endMark(chart));
  return drawn;
}

/** The value at the end of the ascent: a point, its interval as a whisker, and its figure beside it. */
function endMark({ curve, ends: { last }, frame, x, y }: Markings): Drawing[] {
  const below = curve.kind === 'margin' && last.value < 0;
  const colour = below ? 'var(--short)' : 'var(--ink)';
  const text = `${readingText(last.value)} m/s`;
  const endX = x(last.time_s);
  const endY = y(last.value);
  const room = letter * text.length;
  // Beside the point where the curve ends there, else over it.
  const runsOn = curve.time_s.some((t, i) => t > last.time_s + 1 && (curve.values[i] ?? null) !== null);
  const beside = !runsOn && endX + 10 + room <= frame.right;
  // Over the point the label stands clear of all the curve that it is above.
  const from = endX - room - 4;
  const crest = curve.time_s.reduce((top, t, i) => {
    const v = curve.values[i] ?? null;
    return v === null || x(t) < from || x(t) > endX ? top : Math.min(top, y(v));
  }, endY);
  const whisker = curve.told === null ? null : { low: y(curve.told.low), high: y(curve.told.high) };
  return [
    ...(whisker !== null && whisker.low - whisker.high > 8
      ? [
          draw('path', {
            d: `M${endX - 4} ${whisker.high}h8M${endX} ${whisker.high}V${whisker.low}M${endX - 4} ${whisker.low}h8`,
            stroke: colour,
            fill: 'none',
          }),
        ]
      : []),
    draw('circle', { cx: endX, cy: endY, r: 3, fill: below ? 'var(--short)' : 'var(--reached)' }),
    draw(
      'text',
      {
        ...mark,
        fill: colour,
        x: beside ? endX + 8 : Math.min(endX, frame.right - 2),
        y: beside ? endY + 4 : crest - 8,
        'text-anchor': beside ? 'start' : 'end',
      },
      text,
    ),
  ];
}
