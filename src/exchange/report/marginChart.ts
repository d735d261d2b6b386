import { readingText, tickText, timeText } from '../readingText.ts';
import { valueAt } from '../sampleAt.ts';
import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough, picture } from './drawing.ts';
import { curveEnds, curveSentence, type HeroCurve, momentText } from './heroCurve.ts';
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
/** Mean width of a letter of the chart's 13 px bold text, for keeping labels apart, px. */
const letter = 7.4;

const mark = {
  'font-size': 13,
  'font-weight': 650,
  'paint-order': 'stroke',
  stroke: 'var(--sheet)',
  'stroke-width': 4,
  'stroke-linejoin': 'round',
};

/** What could still be wasted, against time; below zero it changes hue and is hatched. Null without a value. */
export function marginChart(chart: MarginChart): Drawing | null {
  const { id, curve, lostAt_s, span, frame, height } = chart;
  const ends = curveEnds(curve);
  if (ends === null) return null;
  const planned = curve.kind === 'margin' ? chart.overlays.filter((o) => o.margin !== null) : [];
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
    ...(curve.band === null ? [] : inView(curve.time_s, curve.band.low)),
    ...(curve.band === null ? [] : inView(curve.time_s, curve.band.high)),
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
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
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
        draw('rect', { x: frame.left, y: 0, width: frame.right - frame.left, height }),
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
    draw('g', { 'clip-path': `url(#${id}-inside)` }, bandOf(curve, x, y), ...planLines(planned, x, y)),
    draw('line', { ...across, y1: y(0), y2: y(0), stroke: 'var(--ink)', 'stroke-width': 1.25 }),
    planLabels(planned, curve, span, x, y, lost === null ? null : x(lost)),
    markings({ chart, ends, lost, x, y, bottom }),
  );
}

/** The stretch that was chosen, shaded from top to bottom. */
export function framedBand(
  framed: Span | null,
  x: (t: number) => number,
  frame: PlotFrame,
  top: number,
  bottom: number,
): Drawing | null {
  if (framed === null) return null;
  const from = Math.max(x(framed.start_s), frame.left);
  const to = Math.min(x(framed.end_s), frame.right);
  if (to <= from) return null;
  return draw('rect', { x: from, y: top, width: to - from, height: bottom - top, fill: 'var(--framed)' });
}

/** The 95 % interval along the curve, where the review has it. */
function bandOf(curve: HeroCurve, x: (t: number) => number, y: (v: number) => number): Drawing | null {
  const { band } = curve;
  if (band === null) return null;
  const upper = curveRuns(curve.time_s, band.high, x, y);
  const lower = curveRuns(curve.time_s, band.low, x, y);
  const d = upper.map((run, i) => `${pathThrough([...run, ...(lower[i] ?? []).toReversed()])}Z`).join('');
  return draw('path', { d, fill: 'var(--ink)', 'fill-opacity': 0.16 });
}

function planLines(
  planned: readonly Overlay[],
  x: (t: number) => number,
  y: (v: number) => number,
): Drawing[] {
  return planned.map(({ margin }) =>
    draw('path', {
      d: curveRuns(margin?.time_s ?? [], margin?.values ?? [], x, y)
        .map(pathThrough)
        .join(''),
      fill: 'none',
      stroke: 'var(--muted)',
      'stroke-width': 1.5,
      'stroke-dasharray': '5 4',
    }),
  );
}

/** Each plan named on its curve, where the flown curve is farthest from it. */
function planLabels(
  planned: readonly Overlay[],
  curve: HeroCurve,
  span: Span,
  x: (t: number) => number,
  y: (v: number) => number,
  lost_px: number | null,
): Drawing[] {
  return planned.flatMap(({ name, margin }, k) => {
    const places = [0.55, 0.65, 0.45, 0.75, 0.35, 0.85].flatMap((share) => {
      const t = span.start_s + (share - 0.06 * k) * (span.end_s - span.start_s);
      const v = margin === null ? null : valueAt(margin.time_s, margin.values, t);
      if (v === null) return [];
      if (lost_px !== null && Math.abs(x(t) - lost_px) < 0.5 * letter * name.length + 8) return [];
      const flown = valueAt(curve.time_s, curve.values, t);
      return [{ t, v, clear: flown === null ? 60 : Math.min(60, Math.abs(y(flown) - y(v))) }];
    });
    const [best] = places.toSorted((a, b) => b.clear - a.clear);
    if (best === undefined) return [];
    return [
      draw(
        'text',
        {
          ...mark,
          'font-weight': 400,
          'font-size': 12,
          x: x(best.t),
          y: y(best.v) - 7,
          'text-anchor': 'middle',
          fill: 'var(--muted)',
        },
        name,
      ),
    ];
  });
}

interface Markings {
  readonly chart: MarginChart;
  readonly ends: NonNullable<ReturnType<typeof curveEnds>>;
  readonly lost: number | null;
  readonly x: (t: number) => number;
  readonly y: (v: number) => number;
  readonly bottom: number;
}

/** Start, lost moment and end with their words, none over another. */
function markings({ chart, ends, lost, x, y, bottom }: Markings): Drawing[] {
  const { curve, span, frame } = chart;
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
  const drawn: Drawing[] = [];
  const startValue = `${readingText(ends.first.value)} m/s`;
  const startMoment = momentText(ends.first.time_s);
  const startLabels = [
    ...(curve.kind === 'margin' && ends.first.value >= 0 ? [`${startValue} to spare ${startMoment}`] : []),
    `${startValue} ${startMoment}`,
  ];
  const startX = x(ends.first.time_s) + 8;
  const lostLabel = lost === null ? '' : `orbit out of reach from ${timeText(lost)}`;
  const lostX = lost === null ? 0 : x(lost);
  const lostRight = lostX + 8 + letter * lostLabel.length <= frame.right;
  const lostLeftEdge = lostRight ? lostX : lostX - 8 - letter * lostLabel.length;
  // The longest wording that stays clear of the lost moment's label. Where none does, that label goes down to its
  // point, where nothing else is; with a plan near there, the start's goes on a row of its own.
  const fitting = startLabels.find(
    (label) => lost === null || startX + letter * label.length < lostLeftEdge - 10,
  );
  const crowded = fitting === undefined;
  const atPoint = crowded && chart.overlays.every((o) => o.margin === null);
  if (lost !== null) {
    drawn.push(
      draw('line', {
        x1: lostX,
        x2: lostX,
        y1: atPoint ? topRoom : 10,
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
  if (inside(ends.last.time_s)) drawn.push(...endMark(chart, ends.last, x, y));
  return drawn;
}

/** The value at the end of the ascent: a point, its interval as a whisker, and its figure beside it. */
function endMark(
  { curve, frame }: MarginChart,
  last: { readonly time_s: number; readonly value: number },
  x: (t: number) => number,
  y: (v: number) => number,
): Drawing[] {
  const below = curve.kind === 'margin' && last.value < 0;
  const colour = below ? 'var(--short)' : 'var(--ink)';
  const text = `${readingText(last.value)} m/s`;
  const endX = x(last.time_s);
  const endY = y(last.value);
  const room = letter * text.length;
  // Beside the point where the curve ends there, else over it.
  const runsOn = curve.time_s.some((t, i) => t > last.time_s + 1 && (curve.values[i] ?? null) !== null);
  const beside = !runsOn && endX + 10 + room <= frame.right;
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
        y: beside ? endY + 4 : endY - 10,
        'text-anchor': beside ? 'start' : 'end',
      },
      text,
    ),
  ];
}
