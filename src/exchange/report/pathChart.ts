import type { Analysis, StripName } from '../../review/types.ts';
import { readingText, tickText } from '../readingText.ts';
import { indexAt, valueAt } from '../sampleAt.ts';
import { type Drawing, draw, picture, px } from './drawing.ts';
import { eventWord } from './eventLabels.ts';
import type { Overlay } from './overlay.ts';
import type { PlotFrame, Span } from './plotFrame.ts';
import { ticks } from './ticks.ts';

export interface PathChart {
  readonly analysis: Analysis;
  readonly overlays: readonly Overlay[];
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly height: number;
  /** Moment to mark on the path; null = none. */
  readonly at_s: number | null;
  readonly framed: Span | null;
  /** What lengths and rates are shown in: SI value × scale; kilometres and m/s when left out. */
  readonly units?: PathUnits;
}

export interface PathUnits {
  readonly length: { readonly unit: string; readonly scale: number };
  readonly speed: { readonly unit: string; readonly scale: number };
}

const inKm: PathUnits = { length: { unit: 'km', scale: 1e-3 }, speed: { unit: 'm/s', scale: 1 } };

/** What makes the path broad, m/s each second: what the projected total rose by, else the ledger's losses. */
export interface PathRate {
  readonly name: 'waste' | 'losses';
  readonly at: (time_s: number) => number;
}

const lossNames: readonly StripName[] = [
  'gravityLossRate_m_s2',
  'steeringLossRate_m_s2',
  'dragLossRate_m_s2',
  'backPressureLossRate_m_s2',
];

/** Null where neither is known. */
export function pathRate({ review, strips }: Analysis): PathRate | null {
  const { waste } = review;
  if (waste !== null) {
    const { time_s } = waste.curves;
    return { name: 'waste', at: (t) => Math.max(0, waste.rates.total[indexAt(time_s, t) + 1] ?? 0) };
  }
  const losses = lossNames.flatMap((name) => strips.channels[name] ?? []);
  if (losses.length === 0) return null;
  const at = (t: number) =>
    losses.reduce((sum, l) => sum + Math.max(0, valueAt(strips.time_s, l.values, t) ?? 0), 0);
  return { name: 'losses', at };
}

/** Points that draw the path, and its width in px at each. */
const points = 400;
const thin_px = 1.5;
const broad_px = 11;
const letter = 6.6;
const top_px = 40;
const axis_px = 22;

interface PathPoint {
  readonly time_s: number;
  readonly downrange: number;
  readonly altitude: number;
  readonly rate: number;
}

/** True where the log lets the path be drawn: it moves over the ground as well as up. */
export function hasPath({ strips }: Analysis): boolean {
  const downrange = strips.channels.downrange_m?.values;
  return (
    downrange !== undefined && strips.channels.altitude_m !== undefined && downrange.some((d) => d > 100)
  );
}

/** Altitude against downrange; the line is the broader the more was lost each second. */
export function pathChart(chart: PathChart): Drawing | null {
  const { analysis, span, frame, height, overlays } = chart;
  const { length, speed } = chart.units ?? inKm;
  const { strips, review } = analysis;
  const downrange = strips.channels.downrange_m?.values;
  const altitude = strips.channels.altitude_m?.values;
  if (downrange === undefined || altitude === undefined) return null;
  const rate = pathRate(analysis);
  const along = (t: number): PathPoint | null => {
    const d = valueAt(strips.time_s, downrange, t);
    const h = valueAt(strips.time_s, altitude, t);
    return d === null || h === null
      ? null
      : {
          time_s: t,
          downrange: d * length.scale,
          altitude: h * length.scale,
          rate: (rate?.at(t) ?? 0) * speed.scale,
        };
  };
  const path = Array.from({ length: points + 1 }, (_, i) =>
    along(span.start_s + (i / points) * (span.end_s - span.start_s)),
  ).filter((p) => p !== null);
  const [first] = path;
  const last = path[path.length - 1];
  if (first === undefined || last === undefined) return null;

  const planned = overlays.flatMap((o) => {
    const d = o.channels.downrange_m;
    const h = o.channels.altitude_m;
    if (d === undefined || h === undefined) return [];
    const line = path.flatMap(({ time_s }) => {
      const x = valueAt(o.time_s, d, time_s);
      const y = valueAt(o.time_s, h, time_s);
      return x === null || y === null ? [] : [{ x: x * length.scale, y: y * length.scale }];
    });
    return line.length > 1 ? [{ name: o.name, line }] : [];
  });
  const all = [...path.map((p) => ({ x: p.downrange, y: p.altitude })), ...planned.flatMap((p) => p.line)];
  const lowX = Math.min(...all.map((p) => p.x));
  const highX = Math.max(...all.map((p) => p.x), lowX + 0.001);
  const highY = Math.max(...all.map((p) => p.y), 0.001);
  const lowY = Math.min(0, ...all.map((p) => p.y));
  const bottom = height - axis_px - 4;
  const x = (d: number) => frame.left + ((d - lowX) / (highX - lowX)) * (frame.right - frame.left);
  const y = (h: number) => bottom - ((h - lowY) / (1.06 * (highY - lowY))) * (bottom - top_px);

  const highest = Math.max(...path.map((p) => p.rate), 1e-9);
  // A round rate near the highest gives the key; below a tenth of a m/s each second the path keeps one width.
  const key = rate === null || highest < 0.1 ? null : (ticks(0, highest, 2).at(-1) ?? null);
  const widthOf = (r: number) => (key === null ? 2 : thin_px + (broad_px - thin_px) * (r / highest));
  const at = chart.at_s === null ? null : along(chart.at_s);
  const muted = { fill: 'var(--muted)' };
  const inSpan = review.events.filter((e) => e.time_s >= span.start_s && e.time_s <= span.end_s);

  return picture(
    frame.width,
    height,
    `Path: altitude against downrange, from ${readingText(first.downrange)} ${length.unit} downrange and ${readingText(first.altitude)} ${length.unit} up to ${readingText(last.downrange)} ${length.unit} downrange and ${readingText(last.altitude)} ${length.unit} up, highest ${readingText(highY)} ${length.unit}`,
    ticks(lowY, 1.06 * highY, 4).flatMap((v) => [
      draw('line', {
        x1: frame.left,
        x2: frame.right,
        y1: y(v),
        y2: y(v),
        stroke: v === 0 ? 'var(--ink)' : 'var(--rule)',
      }),
      draw('text', { ...muted, x: frame.left - 8, y: y(v) + 4, 'text-anchor': 'end' }, tickText(v)),
    ]),
    ticks(lowX, highX, frame.narrow ? 3 : 6).map((v) =>
      draw(
        'text',
        { ...muted, x: Math.min(x(v), frame.width - 14), y: height - 6, 'text-anchor': 'middle' },
        tickText(v),
      ),
    ),
    planned.flatMap(({ name, line }, k) => {
      const label = line[Math.floor(line.length * (0.7 - 0.1 * k))];
      return [
        draw('path', {
          d: line.map((p, i) => `${i === 0 ? 'M' : 'L'}${px(x(p.x))} ${px(y(p.y))}`).join(''),
          fill: 'none',
          stroke: 'var(--muted)',
          'stroke-width': 1.5,
          'stroke-dasharray': '5 4',
        }),
        label === undefined
          ? null
          : draw(
              'text',
              { ...muted, x: x(label.x), y: y(label.y) + 18, 'text-anchor': 'middle', ...halo },
              name,
            ),
      ];
    }),
    framedPath(chart, path, x, y),
    draw('path', { d: broadLine(path, x, y, (p) => widthOf(p.rate)), fill: 'var(--ink)' }),
    pathEvents(inSpan, along, x, y, frame),
    key === null ? null : widthKey(key, widthOf(key), rate?.name ?? 'losses', speed.unit, frame),
    at === null
      ? null
      : draw('circle', {
          cx: x(at.downrange),
          cy: y(at.altitude),
          r: 5,
          fill: 'var(--sheet)',
          stroke: 'var(--ink)',
          'stroke-width': 2,
        }),
  );
}

const halo = {
  'paint-order': 'stroke',
  stroke: 'var(--sheet)',
  'stroke-width': 4,
  'stroke-linejoin': 'round',
};

type Place = (value: number) => number;

/** Outline of a line whose width changes along it. */
function broadLine(path: readonly PathPoint[], x: Place, y: Place, width: (p: PathPoint) => number): string {
  const places = path.map((p) => ({ x: x(p.downrange), y: y(p.altitude), half: width(p) / 2 }));
  const sides = places.map((p, i) => {
    const before = places[Math.max(0, i - 1)] ?? p;
    const after = places[Math.min(places.length - 1, i + 1)] ?? p;
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    const nx = -(after.y - before.y) / length;
    const ny = (after.x - before.x) / length;
    return { left: [p.x + nx * p.half, p.y + ny * p.half], right: [p.x - nx * p.half, p.y - ny * p.half] };
  });
  const outline = [...sides.map((s) => s.left), ...sides.toReversed().map((s) => s.right)];
  return `${outline.map(([a = 0, b = 0], i) => `${i === 0 ? 'M' : 'L'}${px(a)} ${px(b)}`).join('')}Z`;
}

/** The chosen stretch behind the path. */
function framedPath({ framed }: PathChart, path: readonly PathPoint[], x: Place, y: Place): Drawing | null {
  if (framed === null) return null;
  const chosen = path.filter((p) => p.time_s >= framed.start_s && p.time_s <= framed.end_s);
  if (chosen.length < 2) return null;
  return draw('path', { d: broadLine(chosen, x, y, () => broad_px + 8), fill: 'var(--framed)' });
}

/** Events as points on the path; their words above it, right of it where it is steep, none over another. */
function pathEvents(
  events: Analysis['review']['events'],
  along: (t: number) => PathPoint | null,
  x: Place,
  y: Place,
  frame: PlotFrame,
): (Drawing | null)[] {
  const telling = new Set(['cutoff', 'max-q', 'separation', 'apoapsis', 'touchdown', 'parachute-open']);
  const taken: { left: number; right: number; y: number }[] = [];
  return events.flatMap((event) => {
    const p = telling.has(event.name) ? along(event.time_s) : null;
    if (p === null) return [];
    const [px, py] = [x(p.downrange), y(p.altitude)];
    const ahead = along(event.time_s + 2) ?? p;
    const steep = Math.abs(y(ahead.altitude) - py) > Math.abs(x(ahead.downrange) - px);
    const word = eventWord(event.name);
    const half = (letter * word.length) / 2;
    const room = steep
      ? { left: px + 12, right: px + 12 + 2 * half, y: py + 4 }
      : { left: px - half, right: px + half, y: py - 12 };
    const free =
      room.left >= frame.left &&
      room.right <= frame.right &&
      taken.every((t) => Math.abs(t.y - room.y) > 15 || room.right + 6 < t.left || room.left > t.right + 6);
    if (free) taken.push(room);
    return [
      draw('circle', {
        cx: px,
        cy: py,
        r: 2.5,
        fill: 'var(--sheet)',
        stroke: 'var(--ink)',
        'stroke-width': 1.5,
      }),
      free ? draw('text', { x: room.left, y: room.y, fill: 'var(--muted)', ...halo }, word) : null,
    ];
  });
}

/** How broad a round rate is drawn. */
function widthKey(
  key: number,
  width: number,
  name: PathRate['name'],
  unit: string,
  frame: PlotFrame,
): Drawing[] {
  const words = name === 'waste' ? 'of the margin lost each second' : 'lost each second';
  return [
    draw('rect', { x: frame.left, y: 12 - width / 2, width: 28, height: width, fill: 'var(--ink)' }),
    draw('text', { x: frame.left + 36, y: 16, fill: 'var(--muted)' }, `${tickText(key)} ${unit} ${words}`),
  ];
}
