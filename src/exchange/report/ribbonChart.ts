import type { ReviewWaste, WasteCauseName } from '../../review/types.ts';
import { readingText, tickText } from '../readingText.ts';
import { indexAt } from '../sampleAt.ts';
import { type Drawing, draw, picture, px } from './drawing.ts';
import { framedBand } from './framedBand.ts';
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
  const stretches = stepsOf(waste, causes, span, frame);
  const { low, high } = scaleOf(causes, stretches);
  const top = 6;
  const bottom = height - 4;
  const y = (v: number) =>
    bottom - ((Math.min(Math.max(v, low), high) - low) / (high - low)) * (bottom - top);
  const taken = new Map<Step, { up: number; down: number }>();
  const layers = causes.map(({ key, colour }) => {
    const d = stretches
      .map((step) => {
        const { from, to } = step;
        const v = step.rates[key] ?? 0;
        const base = taken.get(step) ?? { up: 0, down: 0 };
        const start = v >= 0 ? base.up : base.down;
        taken.set(step, v >= 0 ? { ...base, up: base.up + v } : { ...base, down: base.down + v });
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

/** A step of the ribbon, px, with the mean rate of each cause over it. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly rates: Partial<Record<WasteCauseName, number>>;
}

/** Narrowest step that is drawn, px. */
const narrowest_px = 1.5;

/**
 * The stretches in view as steps. Those too narrow to be seen (the edges of burns) are drawn together with their
 * neighbours at their common mean, so that the areas stay what was lost.
 */
function stepsOf(
  waste: ReviewWaste,
  causes: readonly RibbonCause[],
  span: Span,
  frame: PlotFrame,
): readonly Step[] {
  const { time_s } = waste.curves;
  const perSecond = (frame.right - frame.left) / (span.end_s - span.start_s);
  const x = timeScale(frame, span);
  const steps: Step[] = [];
  let gathered = { start_s: 0, end_s: 0, sums: new Map<WasteCauseName, number>() };
  let open = false;
  const close = () => {
    const length = gathered.end_s - gathered.start_s;
    const rates = Object.fromEntries([...gathered.sums].map(([key, sum]) => [key, sum / length]));
    steps.push({
      from: Math.max(x(gathered.start_s), frame.left),
      to: Math.min(x(gathered.end_s), frame.right),
      rates,
    });
    open = false;
  };
  for (let i = 1; i < time_s.length; i++) {
    const [start_s = 0, end_s = 0] = [time_s[i - 1], time_s[i]];
    if (end_s <= span.start_s || start_s >= span.end_s || end_s <= start_s) continue;
    if (!open) gathered = { start_s, end_s, sums: new Map() };
    open = true;
    gathered.end_s = end_s;
    for (const { key } of causes) {
      const lost = (waste.rates[key][i] ?? 0) * (end_s - start_s);
      gathered.sums.set(key, (gathered.sums.get(key) ?? 0) + lost);
    }
    if ((end_s - gathered.start_s) * perSecond >= narrowest_px) close();
  }
  // What is left at the end is too narrow to stand alone: the last step takes it in.
  if (open) {
    const before = steps.pop();
    if (before === undefined) close();
    else {
      const earlier = (before.to - before.from) / perSecond;
      const length = earlier + gathered.end_s - gathered.start_s;
      const rates = Object.fromEntries(
        causes.map(({ key }) => [
          key,
          ((before.rates[key] ?? 0) * earlier + (gathered.sums.get(key) ?? 0)) / length,
        ]),
      );
      steps.push({ from: before.from, to: Math.min(x(gathered.end_s), frame.right), rates });
    }
  }
  return steps;
}

/** Highest and lowest stack in view. */
function scaleOf(
  causes: readonly RibbonCause[],
  steps: readonly Step[],
): { readonly low: number; readonly high: number } {
  let low = 0;
  let high = 0;
  for (const { rates } of steps) {
    let up = 0;
    let down = 0;
    for (const { key } of causes) {
      const v = rates[key] ?? 0;
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
