import type { Review } from '../../review/types.ts';
import { readingText, tickText } from '../readingText.ts';
import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough, picture } from './drawing.ts';
import { framedBand } from './framedBand.ts';
import { intervalBand } from './intervalBand.ts';
import { blocksOf, type PictureRows, pictureRows, rangeOf } from './minMaxBlocks.ts';
import type { Overlay } from './overlay.ts';
import { type PlotFrame, type Span, timeScale, timeTickCount } from './plotFrame.ts';
import type { FlightStrip } from './stripList.ts';
import { ticks, timeTicks } from './ticks.ts';
import { logTicks, valueRange } from './valueRange.ts';

export interface LineChart {
  /** Distinct among the pictures of one document. */
  readonly id: string;
  readonly strip: FlightStrip;
  readonly time_s: ArrayLike<number>;
  readonly phases: Review['phases'];
  readonly lostAt_s: number | null;
  readonly overlays: readonly Overlay[];
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly log: boolean;
  /** True where the time axis is drawn under the chart. */
  readonly axis: boolean;
  readonly framed: Span | null;
  /** True for a picture that stands alone: title and names of the lines are drawn in it. */
  readonly titled: boolean;
}

/** Height of a strip's plot, px, without its time axis. */
export function stripHeight(frame: PlotFrame): number {
  return frame.narrow ? 108 : 86;
}

const axis_px = 22;
const title_px = 22;
const letter = 6.8;

/** Rows of a strip that its width can show, in the strip's unit, one list for each line. */
function stripRows({ strip, time_s, span, frame }: LineChart): PictureRows {
  const blocks = strip.lines.map((l) => blocksOf(l.strip.values));
  const rows = pictureRows(time_s, blocks, span.start_s, span.end_s, frame.right - frame.left);
  return { ...rows, lines: rows.lines.map((l) => scaled(l, strip.scale)) };
}

export function scaled(values: readonly (number | null)[], scale: number): (number | null)[] {
  return values.map((v) => (v === null ? null : v * scale));
}

/** One strip as a picture, for print, reports and saving; on the page it is drawn on a canvas. */
export function lineChart(chart: LineChart): Drawing {
  const { id, strip, span, frame, log, axis } = chart;
  const head = chart.titled ? title_px : 0;
  const height = head + stripHeight(frame) + (axis ? axis_px : 0);
  const top = head + 6;
  const bottom = head + stripHeight(frame) - 4;
  const rows = stripRows(chart);
  const lines = strip.lines.map((line, i) => ({ ...line, values: rows.lines[i] ?? [] }));
  const [low, high] = valueRange({ time_s: rows.time_s, lines }, span, strip.fromZero, log);
  const x = timeScale(frame, span);
  const place = log
    ? (v: number) => Math.log10(Math.max(v, low * 1e-3) / low) / Math.log10(high / low)
    : (v: number) => (v - low) / (high - low);
  const y = (v: number) => bottom - place(v) * (bottom - top);
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
  return picture(
    frame.width,
    height,
    stripSentence(strip),
    draw(
      'defs',
      {},
      draw(
        'clipPath',
        { id: `${id}-plot` },
        draw('rect', {
          x: frame.left,
          y: top - 2,
          width: frame.right - frame.left,
          height: bottom - top + 4,
        }),
      ),
    ),
    chart.titled ? titleLine(strip, frame) : null,
    phaseShades(chart.phases, x, frame, top, bottom),
    framedBand(chart.framed, x, frame, top, bottom),
    (log ? logTicks(low, high, 3) : ticks(low, high, 3)).flatMap((v) => [
      draw('line', { x1: frame.left, x2: frame.right, y1: y(v), y2: y(v), stroke: 'var(--rule)' }),
      draw(
        'text',
        { x: frame.left - 8, y: y(v) + 4, 'text-anchor': 'end', fill: 'var(--muted)' },
        tickText(v),
      ),
    ]),
    draw(
      'g',
      { 'clip-path': `url(#${id}-plot)` },
      lines.map(({ strip: { half }, values, colour }) => {
        if (half === undefined) return null;
        const shifted = (by: number) => values.map((v) => (v === null ? null : v + by * half * strip.scale));
        return intervalBand(rows.time_s, { low: shifted(-1), high: shifted(1) }, x, y, `var(${colour})`);
      }),
      chart.overlays.flatMap((overlay) =>
        strip.lines.map((line) => {
          const values = overlay.channels[line.name];
          if (values === undefined || line.guest) return null;
          const thin = pictureRows(
            overlay.time_s,
            [blocksOf(values)],
            span.start_s,
            span.end_s,
            frame.right - frame.left,
          );
          return draw('path', {
            d: curveRuns(thin.time_s, scaled(thin.lines[0] ?? [], strip.scale), x, y)
              .map(pathThrough)
              .join(''),
            fill: 'none',
            stroke: `var(${line.colour})`,
            'stroke-opacity': 0.9,
            'stroke-dasharray': '2 2.5',
            'stroke-width': 1.5,
          });
        }),
      ),
      lines.map(({ values, colour, dashed }) =>
        draw('path', {
          d: curveRuns(rows.time_s, values, x, y).map(pathThrough).join(''),
          fill: 'none',
          stroke: `var(${colour})`,
          'stroke-width': 1.5,
          'stroke-linejoin': 'round',
          'stroke-dasharray': dashed ? '5 4' : null,
        }),
      ),
    ),
    chart.lostAt_s !== null && inside(chart.lostAt_s)
      ? draw('line', {
          x1: x(chart.lostAt_s),
          x2: x(chart.lostAt_s),
          y1: top,
          y2: bottom,
          stroke: 'var(--short)',
        })
      : null,
    axis
      ? timeTicks(span.start_s, span.end_s, timeTickCount(frame)).map((t) =>
          draw(
            'text',
            {
              x: Math.min(x(t), frame.width - 12),
              y: bottom + 19,
              'text-anchor': 'middle',
              fill: 'var(--muted)',
            },
            tickText(t),
          ),
        )
      : null,
  );
}

/** Every second phase faintly shaded, so that burns and coasts are told apart down all charts. */
function phaseShades(
  phases: Review['phases'],
  x: (t: number) => number,
  frame: PlotFrame,
  top: number,
  bottom: number,
): (Drawing | null)[] {
  return phases.map((p, i) => {
    const from = Math.max(x(p.start_s), frame.left);
    const to = Math.min(x(p.end_s), frame.right);
    if (i % 2 === 1 || to <= from) return null;
    return draw('rect', {
      x: from,
      y: top,
      width: to - from,
      height: bottom - top,
      fill: 'var(--phase-shade)',
    });
  });
}

function titleLine(strip: FlightStrip, frame: PlotFrame): (Drawing | string)[] {
  const out: Drawing[] = [
    draw(
      'text',
      { x: 0, y: 14, 'font-weight': 650 },
      strip.title,
      draw('tspan', { fill: 'var(--muted)', 'font-weight': 400 }, ` ${strip.unit}`),
    ),
  ];
  if (!strip.named) return out;
  let right = frame.right;
  for (const line of strip.lines.toReversed()) {
    out.push(draw('text', { x: right, y: 14, 'text-anchor': 'end' }, line.label));
    right -= letter * line.label.length + 6;
    out.push(
      draw('line', {
        x1: right - 18,
        x2: right,
        y1: 10,
        y2: 10,
        stroke: `var(${line.colour})`,
        'stroke-width': 2,
        'stroke-dasharray': line.dashed ? '5 4' : null,
      }),
    );
    right -= 34;
  }
  return out;
}

/** The strip in a sentence, for those who do not see it. */
export function stripSentence(strip: FlightStrip): string {
  const told = strip.lines.map(({ label, strip: { values } }) => {
    const [low, high] = rangeOf(blocksOf(values)) ?? [Number.NaN, Number.NaN];
    return `${label} from ${readingText(low * strip.scale)} to ${readingText(high * strip.scale)}`;
  });
  return `${strip.title}${strip.unit === '' ? '' : `, ${strip.unit}`}: ${told.join(', ')}`;
}
