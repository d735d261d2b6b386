import { tickText } from '../readingText.ts';
import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough, picture } from './drawing.ts';
import { type PlotFrame, timeTickCount } from './plotFrame.ts';
import { ticks } from './ticks.ts';

/** One curve over the axis that all curves of a chart share. */
export interface Curve {
  readonly name: string;
  readonly values: ArrayLike<number | null>;
  /** Token of the page and the report: `--ink`. */
  readonly colour: string;
  /** SVG dash pattern; null = unbroken. */
  readonly dash: string | null;
  /** Drawn thick and last, for the one that is spoken of. */
  readonly bold?: boolean;
  /** Shaded between these, on the same axis: what the curve is the middle of. */
  readonly band?: {
    readonly low: ArrayLike<number | null>;
    readonly high: ArrayLike<number | null>;
  };
}

/** What an axis counts, and how it is shown: value × scale in this unit. */
export interface CurveAxis {
  readonly label: string;
  readonly unit: string;
  readonly scale: number;
}

export interface CurveChart {
  /** Rising values of the shared axis. */
  readonly at: ArrayLike<number>;
  readonly x: CurveAxis;
  readonly y: CurveAxis;
  readonly curves: readonly Curve[];
  readonly frame: PlotFrame;
  readonly height: number;
  /** The chart in a sentence, for those who do not see it. */
  readonly sentence: string;
}

const axis_px = 40;
const top_px = 8;
/** Room above and under the curves, as a share of their height. */
const room = 0.04;

function ends(lists: readonly ArrayLike<number | null>[]): readonly [number, number] | null {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists) {
    for (let i = 0; i < list.length; i++) {
      const v = list[i];
      if (v === null || v === undefined || !Number.isFinite(v)) continue;
      low = Math.min(low, v);
      high = Math.max(high, v);
    }
  }
  return low <= high ? [low, high] : null;
}

/** Stretch of the shared axis on which any curve has a value. */
function spanOf({ at, curves }: CurveChart): readonly [number, number] | null {
  const told = Array.from(at, (v, i) => {
    const known = curves.some(({ values }) => Number.isFinite(values[i] ?? Number.NaN));
    return known ? v : null;
  });
  const span = ends([told]);
  return span === null || span[0] === span[1] ? null : span;
}

/** Curves over a shared axis that is not time; zero always in sight. Null where there is nothing to draw. */
export function curveChart(chart: CurveChart): Drawing | null {
  const { at, x, y, curves, frame, height, sentence } = chart;
  const span = spanOf(chart);
  const lists = curves.flatMap((c) =>
    c.band === undefined ? [c.values] : [c.values, c.band.low, c.band.high],
  );
  const range = ends([...lists, [0]]);
  if (span === null || range === null) return null;
  const [low, high] = range.map((v) => v * y.scale) as [number, number];
  const pad = room * (high - low || 1);
  const [from, to] = [low < 0 ? low - pad : low, high > 0 || high === low ? high + pad : high];
  const bottom = height - axis_px;
  const perX = (frame.right - frame.left) / (span[1] - span[0]);
  const placeX = (v: number) => frame.left + (v - span[0]) * perX;
  const placeY = (v: number) => bottom - ((v * y.scale - from) / (to - from)) * (bottom - top_px);
  const muted = { fill: 'var(--muted)' };
  const drawn = curves.toSorted((a, b) => Number(a.bold ?? false) - Number(b.bold ?? false));
  return picture(
    frame.width,
    height,
    sentence,
    ticks(from, to, 4).flatMap((v) => {
      const level = placeY(v / y.scale);
      return [
        draw('line', {
          x1: frame.left,
          x2: frame.right,
          y1: level,
          y2: level,
          stroke: v === 0 ? 'var(--ink)' : 'var(--rule)',
        }),
        draw('text', { ...muted, x: frame.left - 8, y: level + 4, 'text-anchor': 'end' }, tickText(v)),
      ];
    }),
    ticks(span[0] * x.scale, span[1] * x.scale, timeTickCount(frame)).map((v) =>
      draw(
        'text',
        {
          ...muted,
          x: Math.min(placeX(v / x.scale), frame.width - 14),
          y: bottom + 18,
          'text-anchor': 'middle',
        },
        tickText(v),
      ),
    ),
    draw(
      'text',
      { ...muted, x: frame.right, y: height - 6, 'text-anchor': 'end' },
      x.unit === '' ? x.label : `${x.label}, ${x.unit}`,
    ),
    drawn.map(({ band, colour }) => {
      if (band === undefined) return null;
      const lower = curveRuns(at, band.low, placeX, placeY);
      const d = curveRuns(at, band.high, placeX, placeY)
        .map((run, i) => `${pathThrough([...run, ...(lower[i] ?? []).toReversed()])}Z`)
        .join('');
      return draw('path', { d, fill: `var(${colour})`, 'fill-opacity': 0.16 });
    }),
    drawn.map(({ values, colour, dash, bold = false }) =>
      draw('path', {
        d: curveRuns(at, values, placeX, placeY).map(pathThrough).join(''),
        fill: 'none',
        stroke: `var(${colour})`,
        'stroke-width': bold ? 3 : 1.5,
        'stroke-linejoin': 'round',
        'stroke-dasharray': dash,
      }),
    ),
  );
}
