import { useMemo, useRef } from 'preact/hooks';
import { channelsCsv } from '../../exchange/channelsCsv.ts';
import { flightStrips } from '../../exchange/report/stripList.ts';
import type { Analysis } from '../../review/types.ts';
import { TermsButton } from '../parts/Term.tsx';
import { shownIn, unitSet } from '../units.ts';
import { overlays } from './overlays.ts';
import { printing } from './printing.ts';
import { StripPanel } from './StripPanel.tsx';
import { saveCsv } from './savePicture.ts';
import { TableTwin } from './TableTwin.tsx';
import { useWidth } from './useWidth.ts';

/** Width from which the strips stand in two columns, px. */
const twoColumns_px = 1300;

/** All strips of a flight over one time, with one table twin. */
export function StripSheet({ analysis }: { readonly analysis: Analysis }) {
  const { strips, review } = analysis;
  const chosen = unitSet.value;
  const list = useMemo(
    () => flightStrips(strips).map((s) => ({ ...s, ...shownIn(s.unit, s.scale, 'chart') })),
    [strips, chosen],
  );
  const box = useRef<HTMLDivElement>(null);
  const columns = useWidth(box) >= twoColumns_px && !printing.value ? 2 : 1;
  if (list.length === 0) return null;
  const behind = overlays.value.map((o) => o.name);
  return (
    <section class="strips" aria-label="Strips">
      <div class="head-line">
        <h2>
          Strips{' '}
          <span class="quiet">
            time in s from lift-off{behind.length === 0 ? '' : `; dotted: ${behind.join(', ')}`}
          </span>
        </h2>
        <TermsButton
          of="the strips"
          labels={list.flatMap((s) => [s.title, ...s.lines.map((l) => l.label)])}
        />
      </div>
      <p class="hint">
        Drag to frame a stretch in all charts; Ctrl and wheel, two fingers, + and − zoom; Shift and drag move
        along; a double press shows the ascent again.
      </p>
      <div class={columns === 2 ? 'strip-columns two' : 'strip-columns'} ref={box}>
        {list.map((strip, i) => (
          <StripPanel
            key={strip.title}
            strip={strip}
            time_s={strips.time_s}
            review={review}
            axis={i >= list.length - columns}
          />
        ))}
      </div>
      <div class="chart-foot">
        <TableTwin
          name="Strips as a table"
          time_s={strips.time_s}
          columns={list.flatMap((s) =>
            s.lines.map((l) => ({ label: l.label, unit: s.unit, values: l.strip.values, scale: s.scale })),
          )}
        />
        <button
          type="button"
          class="plain"
          onClick={() => saveCsv(channelsCsv(strips, review.events), review, 'channels')}
        >
          Save all channels as CSV
        </button>
      </div>
    </section>
  );
}
