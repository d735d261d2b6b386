import { useMemo, useRef } from 'preact/hooks';
import { columnsCsv } from '../../exchange/columnsCsv.ts';
import { type Curve, type CurveAxis, curveChart } from '../../exchange/report/curveChart.ts';
import { keyRow, stacked } from '../../exchange/report/drawing.ts';
import { plotFrame } from '../../exchange/report/plotFrame.ts';
import { readingText } from '../figureText.ts';
import { shownIn } from '../units.ts';
import { CurveTwin } from './CurveTwin.tsx';
import { Picture } from './Picture.tsx';
import { SaveChart } from './SaveChart.tsx';
import { type PictureOf, savedWidth_px } from './savePicture.ts';
import { useWidth } from './useWidth.ts';

/** A curve of a panel; curves that share `keyed` have one entry in the key. */
export interface PanelCurve extends Curve {
  /** Words of the key; the curve's name where absent. */
  readonly keyed?: string;
  /** Name of its column in a saved table: `margin_m_s_planned`. */
  readonly column: string;
}

interface Props {
  /** The chart's name, as in its heading and the names of saved files. */
  readonly name: string;
  readonly note: string;
  readonly at: ArrayLike<number>;
  readonly x: CurveAxis & { readonly column: string };
  readonly y: CurveAxis;
  readonly curves: readonly PanelCurve[];
  readonly height?: number;
  /** What saved pictures are of; null = nothing is saved. */
  readonly review: PictureOf | null;
  /** Columns of the saved table where they are more than the curves; made when asked for. */
  readonly saved?: () => readonly Pick<PanelCurve, 'column' | 'values'>[];
}

/** Curves that the table beside a chart has room for; the saved table has all. */
const twinCurves = 40;

function inChosenUnits<A extends CurveAxis>(axis: A): A {
  return { ...axis, ...shownIn(axis.unit, axis.scale, 'chart') };
}

function sentenceOf(name: string, y: CurveAxis, curves: readonly Curve[]): string {
  const told = curves.slice(0, 6).map((c) => {
    const known = Array.from(c.values).filter((v): v is number => v !== null && Number.isFinite(v));
    if (known.length === 0) return `${c.name} not known`;
    const low = known.reduce((a, b) => Math.min(a, b));
    const high = known.reduce((a, b) => Math.max(a, b));
    return `${c.name} from ${readingText(low * y.scale)} to ${readingText(high * y.scale)}`;
  });
  const more = curves.length > 6 ? `, and ${curves.length - 6} more` : '';
  return `${name}${y.unit === '' ? '' : `, ${y.unit}`}: ${told.join('; ')}${more}`;
}

/** One entry for each word of the key. */
function keyOf(curves: readonly PanelCurve[]) {
  const entries = new Map<string, PanelCurve>();
  for (const c of curves) if (!entries.has(c.keyed ?? c.name)) entries.set(c.keyed ?? c.name, c);
  return [...entries].map(([label, { colour, dash }]) => ({ label, colour, dash }));
}

/** Curves over another axis than time, with their key, their table and what saves them. */
export function CurvePanel({ name, note, at, x, y, curves, height = 260, review, saved }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const [shownX, shownY] = [inChosenUnits(x), inChosenUnits(y)];
  const key = useMemo(() => keyOf(curves), [curves]);
  const drawingFor = (wide: number) =>
    curveChart({
      at,
      x: shownX,
      y: shownY,
      curves,
      frame: plotFrame(wide),
      height,
      sentence: sentenceOf(name, shownY, curves),
    });
  const drawing = width === 0 ? null : drawingFor(width);
  const csv = () =>
    columnsCsv([
      { name: x.column, values: at },
      ...(saved?.() ?? curves).map((c) => ({ name: c.column, values: c.values })),
    ]);
  return (
    <section class="curve-panel" aria-label={name}>
      <div class="strip-head">
        <h2>
          {name} <span class="quiet">{[shownY.unit, note].filter((part) => part !== '').join(', ')}</span>
        </h2>
        <div class="strip-lines">
          {(curves.length < 2 && curves[0]?.dash == null ? [] : key).map(({ label, colour, dash }) => (
            <span key={label} class="strip-line">
              <svg class="key-line" width="26" height="8" aria-hidden="true">
                <line
                  x1="0"
                  x2="26"
                  y1="4"
                  y2="4"
                  stroke={`var(${colour})`}
                  stroke-width="2"
                  {...(dash === null ? {} : { 'stroke-dasharray': dash })}
                />
              </svg>
              {label}
            </span>
          ))}
        </div>
      </div>
      <div class="plot" ref={box}>
        {drawing === null ? (
          width === 0 ? null : (
            <p class="instead">There is nothing to draw: neither side has values.</p>
          )
        ) : (
          <Picture drawing={drawing} />
        )}
      </div>
      <div class="chart-foot">
        <CurveTwin
          name={`${name} as a table`}
          at={at}
          x={shownX}
          y={shownY}
          curves={curves.slice(0, twinCurves)}
        />
        {review === null ? null : (
          <SaveChart
            name={name}
            review={review}
            picture={() => {
              const drawn = drawingFor(savedWidth_px);
              if (drawn === null) return null;
              const items = key.map(({ label, colour, dash }) => ({
                label,
                colour,
                look: dash === null ? ('line' as const) : ('dashed' as const),
              }));
              const { left } = plotFrame(savedWidth_px);
              return {
                drawing: stacked([drawn, keyRow(savedWidth_px, left, items)]),
                title: name,
                note: shownY.unit,
              };
            }}
            csv={csv}
          />
        )}
      </div>
    </section>
  );
}
