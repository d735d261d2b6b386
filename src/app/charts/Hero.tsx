import { useMemo, useRef } from 'preact/hooks';
import { valueAt } from '../../exchange/sampleAt.ts';
import type { Analysis } from '../../review/types.ts';
import { readingText, timeText } from '../figureText.ts';
import { heroCurve } from './heroCurve.ts';
import { MarginChart } from './MarginChart.tsx';
import { plotFrame } from './plotFrame.ts';
import { TableTwin } from './TableTwin.tsx';
import { TimeBar } from './TimeBar.tsx';
import { TimePointer } from './TimePointer.tsx';
import { cursor_s, span as shownSpan } from './timeFrame.ts';
import { useWidth } from './useWidth.ts';
import { ZoomButtons } from './ZoomButtons.tsx';

/** Margin (or delta-v to go), time, phases and events, with the cursor that all charts follow. */
export function Hero({ analysis }: { readonly analysis: Analysis }) {
  const { review, strips } = analysis;
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const frame = plotFrame(width);
  const span = shownSpan.value;
  const curve = useMemo(() => heroCurve(review), [review]);
  const { curves, lostAt_s } = review.budget;
  const height = frame.narrow ? 250 : Math.round(Math.min(380, 268 + Math.max(0, width - 1120) * 0.14));

  const describe = (time_s: number): string => {
    const readings = [
      ...(curve?.kind === 'margin'
        ? [['margin', valueAt(curves.time_s, curves.margin, time_s), 'm/s', 1]]
        : []),
      ['to go', valueAt(curves.time_s, curves.toGo, time_s), 'm/s', 1],
      ['altitude', valueAt(strips.time_s, strips.channels.altitude_m?.values ?? [], time_s), 'km', 1e-3],
    ] as [string, number | null, string, number][];
    const known = readings.flatMap(([name, value, unit, scale]) =>
      value === null ? [] : [`${name} ${readingText(value * scale)} ${unit}`],
    );
    return `${timeText(time_s)}: ${known.length ? known.join(', ') : 'nothing known'}`;
  };

  const at = cursor_s.value;
  const title = curve?.title ?? 'Time';
  return (
    <section class="hero" aria-label={title}>
      <div class="head-line">
        <h2>
          {title} <span class="quiet">{at === null ? (curve?.note ?? 's from lift-off') : describe(at)}</span>
        </h2>
        <ZoomButtons analysis={analysis} />
      </div>
      {curve === null ? (
        <p class="absent">
          Neither margin nor delta-v to go is available:{' '}
          {review.budget.deltaVToGo.reason ??
            review.budget.margin.reason ??
            'the log does not show the orbit'}
          .
        </p>
      ) : null}
      {curve?.instead ? <p class="instead">{curve.instead}</p> : null}
      <div class="plot" ref={box}>
        {width === 0 ? null : (
          <>
            {curve === null ? null : (
              <MarginChart
                curve={curve}
                lostAt_s={lostAt_s}
                span={span}
                frame={frame}
                width={width}
                height={height}
              />
            )}
            <TimeBar review={review} span={span} frame={frame} width={width} />
            <TimePointer span={span} frame={frame} describe={describe} />
          </>
        )}
      </div>
      {curve === null ? null : (
        <TableTwin
          name={`${curve.title} as a table`}
          span={span}
          time_s={curves.time_s}
          columns={[
            { label: 'spent', unit: 'm/s', values: curves.spent, scale: 1 },
            { label: 'to go', unit: 'm/s', values: curves.toGo, scale: 1 },
            { label: 'projected total', unit: 'm/s', values: curves.projectedTotal, scale: 1 },
            { label: 'margin', unit: 'm/s', values: curves.margin, scale: 1 },
          ]}
        />
      )}
    </section>
  );
}
