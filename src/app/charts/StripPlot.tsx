import { effect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import UPlot from 'uplot';
import type { LineChart } from '../../exchange/report/lineChart.ts';
import { scaled, stripHeight } from '../../exchange/report/lineChart.ts';
import { blocksOf, pictureRows } from '../../exchange/report/minMaxBlocks.ts';
import { plotFrame, type Span, timeTickCount } from '../../exchange/report/plotFrame.ts';
import { ticks, timeTicks } from '../../exchange/report/ticks.ts';
import { logTicks, valueRange } from '../../exchange/report/valueRange.ts';
import { tickText } from '../figureText.ts';
import { theme } from '../theme.ts';
import { brushed, cursor_s, framed, span } from './timeFrame.ts';
import { followGestures } from './timeGestures.ts';

export type StripPlotProps = Pick<
  LineChart,
  'strip' | 'time_s' | 'phases' | 'lostAt_s' | 'overlays' | 'log' | 'axis'
> & { readonly width: number };

type Rows = (number | null)[];

/** What is drawn for the shown stretch: no more rows than its pixels, extremes kept. */
interface Shown {
  readonly time_s: number[];
  readonly lines: readonly Rows[];
  readonly behind: readonly { readonly time_s: number[]; readonly rows: Rows; readonly line: number }[];
}

function shownRows({ strip, time_s, overlays }: StripPlotProps, shown: Span, columns: number): Shown {
  const blocks = strip.lines.map((l) => blocksOf(l.strip.values));
  const rows = pictureRows(time_s, blocks, shown.start_s, shown.end_s, columns);
  const behind = overlays.flatMap((o) =>
    strip.lines.flatMap(({ name, guest }, line) => {
      const values = o.channels[name];
      if (values === undefined || guest) return [];
      const thin = pictureRows(o.time_s, [blocksOf(values)], shown.start_s, shown.end_s, columns);
      return [{ time_s: thin.time_s, rows: scaled(thin.lines[0] ?? [], strip.scale), line }];
    }),
  );
  return { time_s: rows.time_s, lines: rows.lines.map((l) => scaled(l, strip.scale)), behind };
}

/** A path through rows on the canvas, broken where nothing is known. */
function trace(u: UPlot, time_s: readonly number[], rows: Rows, shift = 0): Path2D {
  const path = new Path2D();
  let drawing = false;
  for (let i = 0; i < rows.length; i++) {
    const v = rows[i];
    if (v === null || v === undefined) {
      drawing = false;
      continue;
    }
    const x = u.valToPos(time_s[i] ?? 0, 'x', true);
    const y = u.valToPos(v + shift, 'y', true);
    if (drawing) path.lineTo(x, y);
    else path.moveTo(x, y);
    drawing = true;
  }
  return path;
}

function inPlot(u: UPlot, paint: (ctx: CanvasRenderingContext2D) => void): void {
  u.ctx.save();
  u.ctx.beginPath();
  u.ctx.rect(u.bbox.left, u.bbox.top, u.bbox.width, u.bbox.height);
  u.ctx.clip();
  paint(u.ctx);
  u.ctx.restore();
}

/** Shades a stretch from top to bottom of the plot. */
function shade(u: UPlot, { start_s, end_s }: Span, fill: string): void {
  inPlot(u, (ctx) => {
    const from = u.valToPos(start_s, 'x', true);
    ctx.fillStyle = fill;
    ctx.fillRect(from, u.bbox.top, u.valToPos(end_s, 'x', true) - from, u.bbox.height);
  });
}

function optionsFor(props: StripPlotProps, now: () => Shown): UPlot.Options {
  const { strip, phases, lostAt_s, width, axis, log } = props;
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const frame = plotFrame(width);
  const font = `12px ${style.getPropertyValue('--sans').trim()}`;
  const range = (): [number, number] => {
    const { time_s, lines, behind } = now();
    const own = lines.map((values, i) => ({ values, guest: strip.lines[i]?.guest ?? false }));
    const [low, high] = valueRange({ time_s, lines: own }, span.peek(), strip.fromZero, log);
    // What stands behind is kept in the picture, each on its own times.
    const others = behind.map((b) =>
      valueRange(
        { time_s: b.time_s, lines: [{ values: b.rows, guest: false }] },
        span.peek(),
        strip.fromZero,
        log,
      ),
    );
    return [Math.min(low, ...others.map(([l]) => l)), Math.max(high, ...others.map(([, h]) => h))];
  };
  return {
    width,
    height: stripHeight(frame) + (axis ? 22 : 0),
    padding: [6, width - frame.right, 4, 0],
    pxAlign: 0,
    legend: { show: false },
    cursor: {
      y: false,
      drag: { x: false, y: false, setScale: false },
      points: { size: 6 },
      // Pointer and fingers are followed by timeGestures; here the cursor is only shown.
      bind: {
        mousedown: () => null,
        mouseup: () => null,
        mousemove: () => null,
        mouseenter: () => null,
        mouseleave: () => null,
        click: () => null,
        dblclick: () => null,
      },
    },
    scales: {
      x: { time: false, range: () => [span.peek().start_s, span.peek().end_s] },
      y: { range, ...(log ? { distr: 3 as const } : {}) },
    },
    axes: [
      {
        show: axis,
        size: 22,
        gap: 4,
        font,
        stroke: colour('--muted'),
        grid: { show: false },
        ticks: { show: false },
        splits: (_u, _i, low, high) => timeTicks(low, high, timeTickCount(frame)),
        values: (_u, splits) => splits.map((t) => tickText(t)),
      },
      {
        size: frame.left,
        gap: 8,
        font,
        stroke: colour('--muted'),
        grid: { stroke: colour('--rule'), width: 1 },
        ticks: { show: false },
        splits: (_u, _i, low, high) => (log ? logTicks(low, high, 3) : ticks(low, high, 3)),
        filter: (_u, splits) => splits,
        values: (_u, splits) => splits.map((v) => tickText(v)),
      },
    ],
    series: [
      {},
      ...strip.lines.map((line) => ({
        stroke: colour(line.colour),
        width: 1.5,
        points: { show: false },
        ...(line.dashed ? { dash: [5, 4] } : {}),
      })),
    ],
    hooks: {
      drawClear: [
        (u) => {
          phases.forEach((p, i) => {
            if (i % 2 === 0) shade(u, p, colour('--phase-shade'));
          });
          const chosen = framed.peek();
          if (chosen !== null) shade(u, chosen, colour('--framed'));
        },
      ],
      drawAxes: [
        (u) =>
          inPlot(u, (ctx) => {
            const { time_s, lines, behind } = now();
            strip.lines.forEach((line, i) => {
              const half = line.strip.half;
              if (half === undefined) return;
              const rows = lines[i] ?? [];
              ctx.globalAlpha = 0.18;
              ctx.fillStyle = colour(line.colour);
              ctx.fill(band(u, time_s, rows, half * strip.scale));
            });
            ctx.globalAlpha = 0.9;
            ctx.lineWidth = 1.5 * devicePixelRatio;
            ctx.setLineDash([2 * devicePixelRatio, 2.5 * devicePixelRatio]);
            for (const { time_s: times, rows, line } of behind) {
              ctx.strokeStyle = colour(strip.lines[line]?.colour ?? '--ink');
              ctx.stroke(trace(u, times, rows));
            }
          }),
      ],
      draw: [
        (u) => {
          if (lostAt_s === null) return;
          inPlot(u, (ctx) => {
            const x = u.valToPos(lostAt_s, 'x', true);
            ctx.strokeStyle = colour('--short');
            ctx.lineWidth = devicePixelRatio;
            ctx.setLineDash([]);
            ctx.beginPath();
            ctx.moveTo(x, u.bbox.top);
            ctx.lineTo(x, u.bbox.top + u.bbox.height);
            ctx.stroke();
          });
        },
      ],
    },
  };
}

/** Outline of a band of one width about rows. */
function band(u: UPlot, time_s: readonly number[], rows: Rows, half: number): Path2D {
  const path = new Path2D();
  let from = 0;
  const close = (to: number) => {
    if (to - from > 1) {
      for (let i = from; i < to; i++) {
        const x = u.valToPos(time_s[i] ?? 0, 'x', true);
        const y = u.valToPos((rows[i] ?? 0) + half, 'y', true);
        if (i === from) path.moveTo(x, y);
        else path.lineTo(x, y);
      }
      for (let i = to - 1; i >= from; i--) {
        path.lineTo(u.valToPos(time_s[i] ?? 0, 'x', true), u.valToPos((rows[i] ?? 0) - half, 'y', true));
      }
      path.closePath();
    }
    from = to + 1;
  };
  for (let i = 0; i < rows.length; i++) if (rows[i] === null) close(i);
  close(rows.length);
  return path;
}

/** One strip drawn by uPlot: the only file that knows it. It follows the stretch and the cursor of all charts. */
export function StripPlot(props: StripPlotProps) {
  const { strip, time_s, phases, lostAt_s, overlays, log, width, axis } = props;
  const place = useRef<HTMLDivElement>(null);
  const shownTheme = theme.value;

  // The theme is among what it depends on: the colours are read from the page.
  useLayoutEffect(() => {
    const node = place.current;
    if (node === null || width === 0) return;
    const frame = plotFrame(width);
    const columns = Math.ceil((frame.right - frame.left) * devicePixelRatio);
    let shown = shownRows(props, span.peek(), columns);
    const plot = new UPlot(
      optionsFor(props, () => shown),
      [shown.time_s, ...shown.lines],
      node,
    );
    const stopGestures = followGestures(plot.over);
    let first = true;
    const stopSpan = effect(() => {
      const { start_s, end_s } = span.value;
      if (first) {
        first = false;
        return;
      }
      shown = shownRows(props, { start_s, end_s }, columns);
      plot.batch(() => {
        plot.setData([shown.time_s, ...shown.lines], false);
        plot.setScale('x', { min: start_s, max: end_s });
      });
      placeCursor(cursor_s.peek());
    });
    const placeCursor = (at: number | null) => {
      const { start_s, end_s } = span.peek();
      const inside = at !== null && at >= start_s && at <= end_s;
      plot.setCursor({ left: inside ? plot.valToPos(at, 'x') : -10, top: 1 }, false);
    };
    const stopCursor = effect(() => placeCursor(cursor_s.value));
    const stopBrush = effect(() => {
      const drawn = brushed.value;
      const left = drawn === null ? 0 : plot.valToPos(drawn.start_s, 'x');
      const right = drawn === null ? 0 : plot.valToPos(drawn.end_s, 'x');
      plot.setSelect(
        { left, top: 0, width: right - left, height: drawn === null ? 0 : plot.over.clientHeight },
        false,
      );
    });
    let framedOnce = false;
    const stopFramed = effect(() => {
      framed.value;
      if (framedOnce) plot.redraw(false);
      framedOnce = true;
    });
    return () => {
      stopSpan();
      stopCursor();
      stopBrush();
      stopFramed();
      stopGestures();
      plot.destroy();
    };
  }, [strip, time_s, phases, lostAt_s, overlays, log, width, axis, shownTheme]);

  return <div class="strip-plot" ref={place} />;
}
