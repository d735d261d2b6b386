import { useMemo, useRef } from 'preact/hooks';
import type { Analysis } from '../../review/types.ts';
import { StripPanel } from './StripPanel.tsx';
import { flightStrips } from './stripList.ts';
import { TableTwin } from './TableTwin.tsx';
import { span } from './timeFrame.ts';
import { useWidth } from './useWidth.ts';

/** Width from which the strips stand in two columns, px. */
const twoColumns_px = 1300;

/** All strips of a flight over one time, with one table twin. */
export function StripSheet({ analysis }: { readonly analysis: Analysis }) {
  const { strips, review } = analysis;
  const list = useMemo(() => flightStrips(strips), [strips]);
  const box = useRef<HTMLDivElement>(null);
  const columns = useWidth(box) >= twoColumns_px ? 2 : 1;
  if (list.length === 0) return null;
  return (
    <section class="strips" aria-label="Strips">
      <h2>
        Strips <span class="quiet">time in s from lift-off</span>
      </h2>
      <div class={columns === 2 ? 'strip-columns two' : 'strip-columns'} ref={box}>
        {list.map((strip, i) => (
          <StripPanel
            key={strip.title}
            strip={strip}
            time_s={strips.time_s}
            lostAt_s={review.budget.lostAt_s}
            axis={i >= list.length - columns}
          />
        ))}
      </div>
      <TableTwin
        name="Strips as a table"
        span={span.value}
        time_s={strips.time_s}
        columns={list.flatMap((s) =>
          s.lines.map((l) => ({ label: l.label, unit: s.unit, values: l.strip.values, scale: s.scale })),
        )}
      />
    </section>
  );
}
