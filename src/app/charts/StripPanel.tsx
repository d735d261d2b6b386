import { useRef } from 'preact/hooks';
import { valueAt } from '../../exchange/sampleAt.ts';
import { readingText } from '../figureText.ts';
import { StripPlot } from './StripPlot.tsx';
import type { FlightStrip } from './stripList.ts';
import { cursor_s } from './timeFrame.ts';
import { useWidth } from './useWidth.ts';

interface Props {
  readonly strip: FlightStrip;
  readonly time_s: Float64Array;
  readonly lostAt_s: number | null;
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

function rangeSentence(strip: FlightStrip): string {
  return strip.lines
    .map((line) => {
      let low = Number.POSITIVE_INFINITY;
      let high = Number.NEGATIVE_INFINITY;
      for (const v of line.strip.values) {
        if (v < low) low = v;
        if (v > high) high = v;
      }
      return `${line.label} from ${readingText(low * strip.scale)} to ${readingText(high * strip.scale)}`;
    })
    .join(', ');
}

/** A strip with its title, its lines named in place of a legend, and the reading at the cursor. */
export function StripPanel({ strip, time_s, lostAt_s, axis }: Props) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  return (
    <div class="strip">
      <div class="strip-head">
        <h3>
          {strip.title} <span class="quiet">{strip.unit}</span>
        </h3>
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
      <div ref={box} role="img" aria-label={`${strip.title}, ${strip.unit}: ${rangeSentence(strip)}`}>
        <StripPlot strip={strip} time_s={time_s} lostAt_s={lostAt_s} width={width} axis={axis} />
      </div>
    </div>
  );
}
