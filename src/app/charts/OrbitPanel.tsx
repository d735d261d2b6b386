import { useMemo, useRef } from 'preact/hooks';
import { orbitChart, orbitView } from '../../exchange/report/orbitChart.ts';
import type { Analysis } from '../../review/types.ts';
import { Picture } from './Picture.tsx';
import { SaveChart } from './SaveChart.tsx';
import { useWidth } from './useWidth.ts';

/** Largest side of the picture, px. */
const largest_px = 420;

/** The orbit at the end of the ascent to scale. The table of the orbit's figures is its twin. */
export function OrbitPanel({ analysis }: { readonly analysis: Analysis }) {
  const box = useRef<HTMLDivElement>(null);
  const width = Math.min(useWidth(box), largest_px);
  const view = useMemo(() => orbitView(analysis), [analysis]);
  if (view === null) return null;
  const { review } = analysis;
  return (
    <section class="orbit" aria-label="Orbit to scale">
      <h2>
        Orbit <span class="quiet">in its plane, to scale</span>
      </h2>
      <div class="plot" ref={box}>
        {width === 0 ? null : <Picture drawing={orbitChart(view, width, 'orbit')} />}
      </div>
      <ul class="orbit-key">
        <li>
          <i class="line-sample as-reached" /> reached
        </li>
        {view.target === null ? null : (
          <li>
            <i class="line-sample dashed as-muted" /> target
          </li>
        )}
        <li>
          <i class="line-sample thick" /> flown
        </li>
        {view.airTop_m === null ? null : (
          <li>
            <span class="swatch air" /> air
          </li>
        )}
      </ul>
      <div class="chart-foot">
        <SaveChart
          name="Orbit"
          review={review}
          picture={() => ({
            drawing: orbitChart(view, 720, 'orbit-saved'),
            title: 'Orbit',
            note: 'to scale',
          })}
          csv={null}
        />
      </div>
    </section>
  );
}
