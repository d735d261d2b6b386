import { useMemo, useRef } from 'preact/hooks';
import { columnsCsv } from '../../exchange/columnsCsv.ts';
import { hasPath, pathChart, pathRate } from '../../exchange/report/pathChart.ts';
import { plotFrame } from '../../exchange/report/plotFrame.ts';
import type { Analysis } from '../../review/types.ts';
import { shownIn, speedIn } from '../units.ts';
import { overlays } from './overlays.ts';
import { Picture } from './Picture.tsx';
import { paperPath_px, printing } from './printing.ts';
import { SaveChart } from './SaveChart.tsx';
import { savedWidth_px } from './savePicture.ts';
import { TableTwin } from './TableTwin.tsx';
import { cursor_s, framed, span as shownSpan } from './timeFrame.ts';
import { useWidth } from './useWidth.ts';

/** Altitude against downrange over the stretch that all charts show. */
export function PathPanel({ analysis }: { readonly analysis: Analysis }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box, paperPath_px);
  const drawable = useMemo(() => hasPath(analysis), [analysis]);
  const { strips, review } = analysis;
  const downrange = strips.channels.downrange_m?.values;
  const altitude = strips.channels.altitude_m?.values;
  const rate = useMemo(() => pathRate(analysis), [analysis]);
  if (!drawable || downrange === undefined || altitude === undefined) return null;
  const units = { length: shownIn('km', 1e-3, 'chart'), speed: speedIn() };
  const chartFor = (wide: number, at_s: number | null) => {
    const frame = plotFrame(wide);
    return pathChart({
      analysis,
      overlays: overlays.value,
      span: shownSpan.value,
      frame,
      height: printing.value || frame.narrow ? 240 : 340,
      at_s,
      units,
      framed: framed.value,
    });
  };
  const chart = width === 0 ? null : chartFor(width, cursor_s.value);
  const note = `altitude against downrange, ${units.length.unit}`;
  return (
    <section class="path" aria-label="Path">
      <h2>
        Path <span class="quiet">{note}</span>
      </h2>
      <div class="plot" ref={box}>
        {chart === null ? null : <Picture drawing={chart} />}
      </div>
      <div class="chart-foot">
        <TableTwin
          name="Path as a table"
          time_s={strips.time_s}
          columns={[
            { label: 'downrange', unit: 'km', values: downrange, scale: 1e-3 },
            { label: 'altitude', unit: 'km', values: altitude, scale: 1e-3 },
            ...(rate === null
              ? []
              : [{ label: rate.name, unit: 'm/s each second', values: rate.at, scale: 1 }]),
          ]}
        />
        <SaveChart
          name="Path"
          review={review}
          picture={() => {
            const drawing = chartFor(savedWidth_px, null);
            return drawing && { drawing, title: 'Path', note };
          }}
          csv={() =>
            columnsCsv([
              { name: 'time_s', values: strips.time_s },
              { name: 'downrange_m', values: downrange },
              { name: 'altitude_m', values: altitude },
            ])
          }
        />
      </div>
    </section>
  );
}
