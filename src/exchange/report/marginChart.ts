import { tickText } from '../readingText.ts';
import { valueAt } from '../sampleAt.ts';
import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough, picture } from './drawing.ts';
import { framedBand } from './framedBand.ts';
import { curveEnds, curveSentence, type HeroCurve } from './heroCurve.ts';
import { intervalBand } from './intervalBand.ts';
import { markings } from './marginMarks.ts';
import { planLabels, planLines } from './marginPlans.ts';
import type { Overlay } from './overlay.ts';
import { type PlotFrame, type Span, timeScale, timeTickCount } from './plotFrame.ts';
import { ticks, timeTicks } from './ticks.ts';

export interface MarginChart {
  /** Distinct among the pictures of one document. */
  readonly id: string;
  readonly curve: HeroCurve;
  readonly lostAt_s: number | null;
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly height: number;
  readonly overlays: readonly Overlay[];
  /** A stretch that the reader chose. */
  readonly framed: Span | null;
}

const topRoom = 34;
/** What could still be wasted, against time; below zero it changes hue and is hatched. Null without a value. */
export function marginChart(chart: MarginChart): Drawing | null {
  const { id, curve, lostAt_s, span, frame, height } = chart;
  const ends = curveEnds(curve);
  if (ends === null) return null;
  const planned = curve.kind === 'margin' ? chart.overlays.filter((o) => o.margin !== null) : [];
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
  const inView = (times: ArrayLike<number>, values: ArrayLike<number | null>) => {
    const edges = [span.start_s, span.end_s].map((t) => valueAt(times, values, t));
    const rows = Array.from(values).filter((_, i) => {
      const t = times[i] ?? Number.NaN;
      return t >= span.start_s && t <= span.end_s;
    });
    return [...edges, ...rows];
  };
  const known = [
    ...inView(curve.time_s, curve.values),
    // The band may run far out beside a burn's edge: there it leaves the picture.
    ...(curve.told === null || !inside(ends.last.time_s) ? [] : [curve.told.low, curve.told.high]),
    ...planned.flatMap(({ margin }) => (margin === null ? [] : inView(margin.time_s, margin.values))),
  ].filter((v): v is number => v !== null && Number.isFinite(v));
  const low = known.reduce((a, b) => Math.min(a, b), 0);
  const high = known.reduce((a, b) => Math.max(a, b), 0);
  const pad = 0.06 * (high - low || 1);
  const bottom = height - 6;
  const yLow = low < 0 ? low - pad : low;
  const x = timeScale(frame, span);
  const y = (v: number) => bottom - ((v - yLow) / (high + pad - yLow)) * (bottom - topRoom);
  const across = { x1: frame.left, x2: frame.right };
  const runs = curveRuns(curve.time_s, curve.values, x, y);
  const lines = runs.map(pathThrough).join('');
  const areas = runs
    .map((r) => `${pathThrough([[r[0]?.[0] ?? 0, y(0)], ...r, [r[r.length - 1]?.[0] ?? 0, y(0)]])}Z`)
    .join('');
  const lost = curve.kind === 'margin' && lostAt_s !== null && inside(lostAt_s) ? lostAt_s : null;
  const line = { fill: 'none', 'stroke-width': 2.25, 'stroke-linejoin': 'round', d: lines };
  const above = curve.kind === 'margin' ? 'var(--reached)' : 'var(--ink)';

  return picture(
    frame.width,
    height,
    curveSentence(curve, lostAt_s),
    draw(
      'defs',
      {},
      draw(
        'clipPath',
        { id: `${id}-above` },
        draw('rect', { x: frame.left, y: 0, width: frame.right - frame.left, height: Math.max(0, y(0)) }),
      ),
      draw(
        'clipPath',
        { id: `${id}-below` },
        draw('rect', {
          x: frame.left,
          y: y(0),
          width: frame.right - frame.left,
          height: Math.max(0, height - y(0)),
        }),
      ),
      draw(
        'clipPath',
        { id: `${id}-inside` },
        draw('rect', {
          x: frame.left,
          y: topRoom - 6,
          width: frame.right - frame.left,
          height: bottom - topRoom + 12,
        }),
      ),
      draw(
        'pattern',
        {
          id: `${id}-hatch`,
          width: 7,
          height: 7,
          patternUnits: 'userSpaceOnUse',
          patternTransform: 'rotate(45)',
        },
        draw('line', { x1: 0, y1: 0, x2: 0, y2: 7, stroke: 'var(--short)', opacity: 0.55 }),
      ),
    ),
    framedBand(chart.framed, x, frame, topRoom, bottom),
    timeTicks(span.start_s, span.end_s, timeTickCount(frame)).map((t) =>
      draw('line', {
        x1: x(t),
        x2: x(t),
        y1: topRoom,
        y2: bottom,
        stroke: 'var(--rule)',
        'stroke-dasharray': '2 4',
      }),
    ),
    ticks(yLow, high + pad, frame.narrow ? 4 : 5).flatMap((v) => [
      draw('line', { ...across, y1: y(v), y2: y(v), stroke: 'var(--rule)' }),
      draw(
        'text',
        { x: frame.left - 8, y: y(v) + 4, 'text-anchor': 'end', fill: 'var(--muted)' },
        tickText(v),
      ),
    ]),
    draw(
      'g',
      { 'clip-path': `url(#${id}-above)` },
      draw('path', { fill: 'var(--area)', d: areas }),
      draw('path', { ...line, stroke: above }),
    ),
    draw(
      'g',
      { 'clip-path': `url(#${id}-below)` },
      draw('path', { d: areas, fill: `url(#${id}-hatch)` }),
      draw('path', { ...line, stroke: 'var(--short)' }),
    ),
    draw(
      'g',
      { 'clip-path': `url(#${id}-inside)` },
      curve.band === null ? null : intervalBand(curve.time_s, curve.band, x, y, 'var(--ink)'),
      planLines(planned, x, y),
    ),
    draw('line', { ...across, y1: y(0), y2: y(0), stroke: 'var(--ink)', 'stroke-width': 1.25 }),
    planLabels(planned, curve, span, x, y, lost === null ? null : x(lost)),
    markings({
      curve,
      ends,
      span,
      frame,
      withPlan: chart.overlays.some((o) => o.margin !== null),
      top: topRoom,
      lost,
      x,
      y,
      bottom,
    }),
  );
}
