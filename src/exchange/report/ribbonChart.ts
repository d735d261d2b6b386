import type { ReviewWaste, WasteCauseName } from '../../review/types.ts';
import { readingText, tickText } from '../readingText.ts';
import { indexAt } from '../sampleAt.ts';
import { type Drawing, draw, picture, px } from './drawing.ts';
import { framedBand } from './marginChart.ts';
import { type PlotFrame, type Span, timeScale } from './plotFrame.ts';
import { ticks } from './ticks.ts';

/** A cause of the margin's loss with its one name and colour; drawn from the base up in this order. */
export interface RibbonCause {
  readonly key: WasteCauseName;
  readonly label: string;
  readonly colour: string;
}

export const ribbonCauses: readonly RibbonCause[] = [
  { key: 'offDirection', label: 'off direction', colour: 'var(--cause-direction)' },
  { key: 'backPressure', label: 'back pressure', colour: 'var(--cause-pressure)' },
  { key: 'drag', label: 'drag', colour: 'var(--cause-drag)' },
  { key: 'offTime', label: 'off time', colour: 'var(--cause-time)' },
  { key: 'drift', label: 'drift', colour: 'var(--cause-drift)' },
];

/** Causes that take or give at least this anywhere, m/s each second, are drawn and named. */
const least_m_s2 = 0.02;

export function shownCauses(waste: ReviewWaste): readonly RibbonCause[] {
  return ribbonCauses.filter(({ key }) => waste.rates[key].some((v) => Math.abs(v) >= least_m_s2));
}

/** Rates of all causes in the stretch that holds a time, m/s each second; null outside the ascent. */
export function ratesAt(waste: ReviewWaste, time_s: number): Record<WasteCauseName, number> | null {
  const { time_s: nodes } = waste.curves;
  const i = indexAt(nodes, time_s) + 1;
  if (i < 1 || i >= nodes.length) return null;
  const at = (key: WasteCauseName) => waste.rates[key][i] ?? 0;
  return {
    offDirection: at('offDirection'),
    backPressure: at('backPressure'),
    drag: at('drag'),
    offTime: at('offTime'),
    drift: at('drift'),
  };
}

export interface RibbonChart {
  readonly waste: ReviewWaste;
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly height: number;
  readonly lostAt_s: number | null;
  readonly framed: Span | null;
}

/** The slope of the margin by its causes: steps over the stretches, what takes above the line, what gives below. */
export function ribbonChart({ waste, span, frame, height, lostAt_s, framed }: RibbonChart): Drawing {
  const x = timeScale(frame, span);
  const causes = shownCauses(waste);
  const { time_s } = waste.curves;
  const stretches = time_s.flatMap((end_s, i) => {
    const start_s = time_s[i - 1];
    if (start_s === undefined || end_s < span.start_s || start_s > span.end_s) return [];
    return [{ i, from: Math.max(x(start_s), frame.left), to: Math.min(x(end_s), frame.right) }];
  });
  const { low, high } = scaleOf(waste, causes, stretches);
  const top = 6;
  const bottom = height - 4;
  const y = (v: number) =>
    bottom - ((Math.min(Math.max(v, low), high) - low) / (high - low)) * (bottom - top);
  const taken = new Map<number, { up: number; down: number }>();
  const layers = causes.map(({ key, colour }) => {
    const d = stretches
      .map(({ i, from, to }) => {
        const v = waste.rates[key][i] ?? 0;
        const base = taken.get(i) ?? { up: 0, down: 0 };
        const start = v >= 0 ? base.up : base.down;
        taken.set(i, v >= 0 ? { ...base, up: base.up + v } : { ...base, down: base.down + v });
        const [a, b] = [y(start), y(start + v)];
        return Math.abs(a - b) < 0.05 ? '' : `M${px(from)} ${px(a)}H${px(to)}V${px(b)}H${px(from)}Z`;
      })
      .join('');
    // A hairline of the same colour closes the seams between neighbouring steps.
    return draw('path', { d, fill: colour, stroke: colour, 'stroke-width': 0.4 });
  });
  const lost = lostAt_s !== null && lostAt_s >= span.start_s && lostAt_s <= span.end_s ? x(lostAt_s) : null;
  return picture(
    frame.width,
    height,
    ribbonSentence(waste, causes),
    framedBand(framed, x, frame, top, bottom),
    layers,
    ticks(low, high, 3).flatMap((v) => [
      draw('line', {
        x1: frame.left,
        x2: frame.right,
        y1: y(v),
        y2: y(v),
        stroke: v === 0 ? 'var(--ink)' : 'var(--rule)',
        'stroke-opacity': v === 0 ? 1 : 0.7,
      }),
      draw(
        'text',
        { x: frame.left - 8, y: y(v) + 4, 'text-anchor': 'end', fill: 'var(--muted)' },
        tickText(v),
      ),
    ]),
    lost === null ? null : draw('line', { x1: lost, x2: lost, y1: top, y2: bottom, stroke: 'var(--short)' }),
  );
}

/** Highest and lowest stack in view. A stretch of less than a pixel (an edge of a burn) does not set the scale. */
function scaleOf(
  waste: ReviewWaste,
  causes: readonly RibbonCause[],
  stretches: readonly { readonly i: number; readonly from: number; readonly to: number }[],
): { readonly low: number; readonly high: number } {
  let low = 0;
  let high = 0;
  for (const { i, from, to } of stretches) {
    if (to - from < 1) continue;
    let up = 0;
    let down = 0;
    for (const { key } of causes) {
      const v = waste.rates[key][i] ?? 0;
      if (v >= 0) up += v;
      else down += v;
    }
    if (up > high) high = up;
    if (down < low) low = down;
  }
  const size = high - low || 1;
  return { low: low < -0.02 * size ? low - 0.05 * size : 0, high: high + 0.08 * size };
}

function ribbonSentence(waste: ReviewWaste, causes: readonly RibbonCause[]): string {
  const told = causes.flatMap(({ key, label }) => {
    const { value } = waste.totals[key].deltaV_m_s;
    return value === null ? [] : [`${label} ${readingText(value)} m/s`];
  });
  return `What the margin was lost to, each second. In all: ${told.join(', ')}`;
}
