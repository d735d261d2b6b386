import { effect } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import UPlot from 'uplot';
import { tickText } from '../figureText.ts';
import { theme } from '../theme.ts';
import { plotFrame, timeTickCount } from './plotFrame.ts';
import type { FlightStrip } from './stripList.ts';
import { ticks, timeTicks } from './ticks.ts';
import { cursor_s, showAscent, showSpan, span } from './timeFrame.ts';

interface Props {
  readonly strip: FlightStrip;
  readonly time_s: Float64Array;
  readonly lostAt_s: number | null;
  readonly width: number;
  /** True where the time axis is drawn under this strip. */
  readonly axis: boolean;
}

const dragStart_px = 6;

/** Scale from the lines that set it, within the rows that are shown, with a little room on both sides. */
function valueRange(u: UPlot, strip: FlightStrip): [number, number] {
  const [from, to] = u.series[0]?.idxs ?? [0, 0];
  let low = strip.fromZero ? 0 : Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  strip.lines.forEach((line, i) => {
    if (line.guest) return;
    const values = u.data[i + 1] ?? [];
    for (let k = from; k <= to; k++) {
      const v = values[k];
      if (v === null || v === undefined || Number.isNaN(v)) continue;
      if (v < low) low = v;
      if (v > high) high = v;
    }
  });
  if (!(high >= low)) return [0, 1];
  const room = 0.08 * (high - low || Math.abs(high) || 1);
  const guests = strip.lines.some((l) => l.guest) ? 2.5 : 1;
  return [strip.fromZero && low >= 0 ? 0 : low - room, high + room * guests];
}

function optionsFor({ strip, lostAt_s, width, axis }: Props): UPlot.Options {
  const style = getComputedStyle(document.documentElement);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const frame = plotFrame(width);
  const font = `12px ${style.getPropertyValue('--sans').trim()}`;
  const grid = { stroke: colour('--rule'), width: 1 };
  return {
    width,
    height: (frame.narrow ? 108 : 86) + (axis ? 22 : 0),
    padding: [6, width - frame.right, 4, 0],
    pxAlign: 0,
    legend: { show: false },
    cursor: {
      y: false,
      drag: { x: true, y: false, setScale: false, dist: dragStart_px },
      points: { size: 6 },
      bind: {
        dblclick: () => () => {
          showAscent();
          return null;
        },
      },
    },
    scales: {
      x: { time: false, range: () => [span.peek().start_s, span.peek().end_s] },
      y: { range: (u) => valueRange(u, strip) },
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
        grid,
        ticks: { show: false },
        splits: (_u, _i, low, high) => ticks(low, high, 3),
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
      draw: [
        (u) => {
          if (lostAt_s === null) return;
          const x = u.valToPos(lostAt_s, 'x', true);
          if (x < u.bbox.left || x > u.bbox.left + u.bbox.width) return;
          u.ctx.save();
          u.ctx.strokeStyle = colour('--short');
          u.ctx.lineWidth = devicePixelRatio;
          u.ctx.setLineDash([]);
          u.ctx.beginPath();
          u.ctx.moveTo(x, u.bbox.top);
          u.ctx.lineTo(x, u.bbox.top + u.bbox.height);
          u.ctx.stroke();
          u.ctx.restore();
        },
      ],
      setCursor: [
        (u) => {
          // Only the chart under the pointer speaks; the others are moved by the signal.
          if (!u.over.matches(':hover')) return;
          const { left } = u.cursor;
          cursor_s.value = left === undefined || left < 0 ? null : u.posToVal(left, 'x');
        },
      ],
      setSelect: [
        (u) => {
          const { left, width: wide } = u.select;
          if (wide < dragStart_px) return;
          u.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
          showSpan({ start_s: u.posToVal(left, 'x'), end_s: u.posToVal(left + wide, 'x') });
        },
      ],
    },
  };
}

/** One strip drawn by uPlot: the only file that knows it. It follows the stretch and the cursor of all charts. */
export function StripPlot(props: Props) {
  const { strip, time_s, lostAt_s, width, axis } = props;
  const place = useRef<HTMLDivElement>(null);
  const shownTheme = theme.value;

  // The theme is among what it depends on: the colours are read from the page.
  useLayoutEffect(() => {
    const node = place.current;
    if (node === null || width === 0) return;
    const columns = strip.lines.map((l) =>
      Array.from(l.strip.values, (v) => (Number.isFinite(v) ? v * strip.scale : null)),
    );
    const plot = new UPlot(optionsFor(props), [time_s, ...columns], node);
    const onLeave = () => {
      cursor_s.value = null;
    };
    plot.over.addEventListener('mouseleave', onLeave);
    const stopSpan = effect(() => {
      const { start_s, end_s } = span.value;
      plot.setScale('x', { min: start_s, max: end_s });
    });
    const stopCursor = effect(() => {
      const at = cursor_s.value;
      if (plot.over.matches(':hover')) return;
      plot.setCursor({ left: at === null ? -10 : plot.valToPos(at, 'x'), top: 1 }, false);
    });
    return () => {
      stopSpan();
      stopCursor();
      plot.over.removeEventListener('mouseleave', onLeave);
      plot.destroy();
    };
  }, [strip, time_s, lostAt_s, width, axis, shownTheme]);

  return <div class="strip-plot" ref={place} />;
}
