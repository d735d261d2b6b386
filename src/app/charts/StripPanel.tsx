import { signal } from '@preact/signals';
import type { FunctionComponent } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import { columnsCsv } from '../../exchange/columnsCsv.ts';
import { lineChart, stripHeight, stripSentence } from '../../exchange/report/lineChart.ts';
import { plotFrame } from '../../exchange/report/plotFrame.ts';
import type { FlightStrip } from '../../exchange/report/stripList.ts';
import { valueAt } from '../../exchange/sampleAt.ts';
import type { Review } from '../../review/types.ts';
import { readingText } from '../figureText.ts';
import { Term } from '../parts/Term.tsx';
import { route, setView } from '../route.ts';
import { overlays } from './overlays.ts';
import { Picture } from './Picture.tsx';
import { printing } from './printing.ts';
import { SaveChart } from './SaveChart.tsx';
import type { StripPlotProps } from './StripPlot.tsx';
import { savedWidth_px } from './savePicture.ts';
import { cursor_s, framed, span } from './timeFrame.ts';
import { useTurn } from './useTurn.ts';
import { useWidth } from './useWidth.ts';

/** Rows from which strips are drawn one after another. */
const longLog_rows = 50_000;

/** What draws strips to be zoomed in; `still` where it could not be fetched: they are shown as on paper. */
const plotter = signal<{ Plot: FunctionComponent<StripPlotProps> } | 'still' | null>(null);

// It is large and the answer stands above it: fetched beside the screen, not waited for.
import('./StripPlot.tsx').then(
  ({ StripPlot }) => {
    plotter.value = { Plot: StripPlot };
  },
  () => {
    plotter.value = 'still';
  },
);

interface Props {
  readonly strip: FlightStrip;
  readonly time_s: Float64Array;
  readonly review: Review;
  readonly axis: boolean;
}

function Reading({
  strip,
  time_s,
  line,
}: Pick<Props, 'strip' | 'time_s'> & { line: FlightStrip['lines'][number] }) {
  const at = cursor_s.value;
  const value = at === null ? null : valueAt(time_s, line.strip.values, at);
  return value === null ? null : <b> {readingText(value * strip.scale)}</b>;
}

/** Strips whose values are drawn by their logarithm, in the address by their first channel. */
function logNames(): readonly string[] {
  return (route.value.view.log ?? '').split(' ').filter((n) => n !== '');
}

function setLog(name: string, wanted: boolean): void {
  const others = logNames().filter((n) => n !== name);
  const next = wanted ? [...others, name] : others;
  setView({ log: next.length === 0 ? null : next.join(' ') });
}

/** A strip with its title, its lines named in place of a legend, and the reading at the cursor. */
export function StripPanel({ strip, time_s, review, axis }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const drawn = plotter.value;
  const ready = useTurn(time_s.length > longLog_rows, drawn !== null);
  const sentence = useMemo(() => (ready ? stripSentence(strip) : strip.title), [strip, ready]);
  const key = strip.lines[0]?.name ?? '';
  const log = strip.fromZero && logNames().includes(key);
  const { lostAt_s } = review.budget;
  // The causes come in a review of the same flight: its phases are those that are drawn.
  const phases = useMemo(() => review.phases, [time_s]);
  const shared = { strip, time_s, phases, lostAt_s, overlays: overlays.value, log };
  const pictureFor = (wide: number, titled: boolean, withAxis: boolean) =>
    lineChart({
      ...shared,
      id: `${key}-${wide}`,
      span: span.value,
      frame: plotFrame(wide),
      axis: withAxis,
      framed: framed.value,
      titled,
    });
  return (
    <div class="strip">
      <div class="strip-head">
        <h3>
          <Term label={strip.title} /> <span class="quiet">{strip.unit}</span>
        </h3>
        <details class="strip-options">
          <summary>
            options<span class="unseen"> of {strip.title}</span>
          </summary>
          <div>
            {strip.fromZero ? (
              <label>
                <input type="checkbox" checked={log} onChange={(e) => setLog(key, e.currentTarget.checked)} />
                logarithmic<span class="unseen"> {strip.title}</span>
              </label>
            ) : null}
            <SaveChart
              name={strip.title}
              review={review}
              picture={() => ({ drawing: pictureFor(savedWidth_px, true, true), title: '', note: '' })}
              csv={() =>
                columnsCsv([
                  { name: 'time_s', values: time_s },
                  ...strip.lines.map((l) => ({ name: l.name, values: l.strip.values })),
                ])
              }
            />
          </div>
        </details>
        <p class="strip-lines">
          {strip.lines.map((line) => (
            <span key={line.name} class="strip-line">
              {strip.named ? (
                <>
                  <i
                    class={`line-sample ${line.dashed ? 'dashed' : ''} ${line.colour.replace(/^--/, 'as-')}`}
                  />
                  {line.label}
                  {line.strip.basis === 'measured' ? null : <span class="quiet"> {line.strip.basis}</span>}
                </>
              ) : (
                <span class="quiet">{line.strip.basis}</span>
              )}
              <Reading strip={strip} time_s={time_s} line={line} />
            </span>
          ))}
        </p>
      </div>
      <div ref={box} {...(printing.value ? {} : { role: 'img', 'aria-label': sentence })}>
        {printing.value || (ready && drawn === 'still') ? (
          <Picture drawing={pictureFor(width, false, axis)} />
        ) : ready && drawn !== null && drawn !== 'still' ? (
          <drawn.Plot {...shared} width={width} axis={axis} />
        ) : (
          <div style={{ height: `${stripHeight(plotFrame(width)) + (axis ? 22 : 0)}px` }} />
        )}
      </div>
    </div>
  );
}
