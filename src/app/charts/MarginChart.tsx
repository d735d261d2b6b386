import { useId } from 'preact/hooks';
import { readingText, tickText, timeText } from '../figureText.ts';
import { curveEnds, curveSentence, type HeroCurve, momentText } from './heroCurve.ts';
import { type PlotFrame, timeTickCount } from './plotFrame.ts';
import { ticks, timeTicks } from './ticks.ts';
import type { Span } from './timeFrame.ts';

interface Props {
  readonly curve: HeroCurve;
  readonly lostAt_s: number | null;
  readonly span: Span;
  readonly frame: PlotFrame;
  readonly width: number;
  readonly height: number;
}

const topRoom = 34;
/** Mean width of a letter of the chart's 13 px bold text, for keeping labels apart, px. */
const letter = 7.4;

/** The curve's unbroken stretches as screen points. */
function stretches(
  curve: HeroCurve,
  x: (t: number) => number,
  y: (v: number) => number,
): [number, number][][] {
  const runs: [number, number][][] = [[]];
  curve.time_s.forEach((t, i) => {
    const v = curve.values[i];
    if (v === null || v === undefined) runs.push([]);
    else runs[runs.length - 1]?.push([x(t), y(v)]);
  });
  return runs.filter((r) => r.length > 1);
}

function pathOf(points: readonly (readonly [number, number])[]): string {
  return points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');
}

/** The page's hero: what could still be wasted, against time; below zero it changes hue and is hatched. */
export function MarginChart({ curve, lostAt_s, span, frame, width, height }: Props) {
  const id = useId();
  const ends = curveEnds(curve);
  if (ends === null) return null;
  const known = curve.values.filter((v) => v !== null);
  const low = Math.min(0, ...known);
  const high = Math.max(0, ...known);
  const pad = 0.06 * (high - low || 1);
  const bottom = height - 6;
  const yLow = low < 0 ? low - pad : low;
  const x = (t: number) =>
    frame.left + ((t - span.start_s) / (span.end_s - span.start_s)) * (frame.right - frame.left);
  const y = (v: number) => bottom - ((v - yLow) / (high + pad - yLow)) * (bottom - topRoom);
  const runs = stretches(curve, x, y);
  const lines = runs.map(pathOf).join('');
  const areas = runs
    .map((r) => `${pathOf([[r[0]?.[0] ?? 0, y(0)], ...r, [r[r.length - 1]?.[0] ?? 0, y(0)]])}Z`)
    .join('');
  const inside = (t: number) => t >= span.start_s && t <= span.end_s;
  const lost = curve.kind === 'margin' && lostAt_s !== null && inside(lostAt_s) ? lostAt_s : null;

  const startValue = `${readingText(ends.first.value)} m/s`;
  const startMoment = momentText(ends.first.time_s);
  const startLabels = [
    ...(curve.kind === 'margin' && ends.first.value >= 0 ? [`${startValue} to spare ${startMoment}`] : []),
    `${startValue} ${startMoment}`,
  ];
  const startShown = inside(ends.first.time_s);
  const startX = x(ends.first.time_s) + 8;
  const lostLabel = lost === null ? '' : `out of reach from ${timeText(lost)}`;
  const lostX = lost === null ? 0 : x(lost);
  const lostRight = lostX + 8 + letter * lostLabel.length <= frame.right;
  const lostLeftEdge = lostRight ? lostX : lostX - 8 - letter * lostLabel.length;
  // The longest wording that stays clear of the lost moment's label; on a row of its own where none does.
  const fitting = startLabels.find(
    (label) => lost === null || startX + letter * label.length < lostLeftEdge - 10,
  );
  const startLabel = fitting ?? startLabels[0] ?? '';
  const startRow = fitting === undefined ? 2 : 1;

  const endLabel = `${readingText(ends.last.value)} m/s`;
  const endX = x(ends.last.time_s);
  const endAtEdge = endX > frame.right - 4;
  const endShown = inside(ends.last.time_s);
  const below = curve.kind === 'margin' && ends.last.value < 0;

  return (
    <svg
      class="hero-chart"
      role="img"
      aria-label={curveSentence(curve, lostAt_s)}
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
    >
      <defs>
        <clipPath id={`${id}-above`}>
          <rect x={frame.left} y={0} width={frame.right - frame.left} height={y(0)} />
        </clipPath>
        <clipPath id={`${id}-below`}>
          <rect x={frame.left} y={y(0)} width={frame.right - frame.left} height={height - y(0)} />
        </clipPath>
        <pattern
          id={`${id}-hatch`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" y1="0" x2="0" y2="7" class="hatch-line" />
        </pattern>
      </defs>
      {timeTicks(span.start_s, span.end_s, timeTickCount(frame)).map((t) => (
        <line key={t} class="time-line" x1={x(t)} x2={x(t)} y1={topRoom} y2={bottom} />
      ))}
      {ticks(yLow, high + pad, frame.narrow ? 4 : 5).map((v) => (
        <g key={v}>
          <line
            class={v === 0 ? 'zero-line' : 'value-line'}
            x1={frame.left}
            x2={frame.right}
            y1={y(v)}
            y2={y(v)}
          />
          <text class="tick" x={frame.left - 8} y={y(v) + 4} text-anchor="end">
            {tickText(v)}
          </text>
        </g>
      ))}
      <g clip-path={`url(#${id}-above)`}>
        <path class="area-above" d={areas} />
        <path class={curve.kind === 'margin' ? 'line-above' : 'line-to-go'} d={lines} />
      </g>
      <g clip-path={`url(#${id}-below)`}>
        <path d={areas} fill={`url(#${id}-hatch)`} />
        <path class="line-below" d={lines} />
      </g>
      <line class="zero-line" x1={frame.left} x2={frame.right} y1={y(0)} y2={y(0)} />
      {lost === null ? null : (
        <g>
          <line class="lost-line" x1={lostX} x2={lostX} y1={10} y2={bottom} />
          <circle class="lost-point" cx={lostX} cy={y(0)} r={4.5} />
          <text
            class="mark short"
            x={lostRight ? lostX + 8 : lostX - 8}
            y={24}
            text-anchor={lostRight ? 'start' : 'end'}
          >
            {lostLabel}
          </text>
        </g>
      )}
      {startShown ? (
        <text class="mark" x={startX} y={startRow === 1 ? 24 : 42}>
          {startLabel}
        </text>
      ) : null}
      {endShown ? (
        <g>
          {endAtEdge ? null : (
            <circle class={below ? 'end-point short' : 'end-point'} cx={endX} cy={y(ends.last.value)} r={3} />
          )}
          <text
            class={below ? 'mark short' : 'mark'}
            x={endAtEdge ? endX - 2 : Math.min(endX, frame.right - (letter * endLabel.length) / 2)}
            y={y(ends.last.value) - 10}
            text-anchor={endAtEdge ? 'end' : 'middle'}
          >
            {endLabel}
          </text>
        </g>
      ) : null}
    </svg>
  );
}
