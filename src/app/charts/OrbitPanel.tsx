import { useMemo, useRef } from 'preact/hooks';
import { keyRow, stacked } from '../../exchange/report/drawing.ts';
import { orbitChart, orbitView } from '../../exchange/report/orbitChart.ts';
import type { Analysis } from '../../review/types.ts';
import { altitudeIn } from '../units.ts';
import { Picture } from './Picture.tsx';
import { SaveChart } from './SaveChart.tsx';
import { useWidth } from './useWidth.ts';

/** Largest side of the picture, px. */
const largest_px = 420;
const savedSide_px = 720;

/** The orbit at the end of the ascent to scale. The table of the orbit's figures is its twin. */
export function OrbitPanel({ analysis }: { readonly analysis: Analysis }) {
  const box = useRef<HTMLDivElement>(null);
  const width = Math.min(useWidth(box), largest_px);
  const view = useMemo(() => orbitView(analysis), [analysis]);
  if (view === null) return null;
  const { review } = analysis;
  const key = [
    { label: 'reached', colour: 'var(--reached)', look: 'line' as const },
    ...(view.target === null ? [] : [{ label: 'target', colour: 'var(--muted)', look: 'dashed' as const }]),
    { label: 'flown', colour: 'var(--ink)', look: 'line' as const },
    ...(view.airTop_m === null ? [] : [{ label: 'air', colour: 'var(--air)', look: 'area' as const }]),
  ];
  return (
    <section class="orbit" aria-label="Orbit to scale">
      <h2>
        Orbit <span class="quiet">in its plane, to scale</span>
      </h2>
      <div class="plot" ref={box}>
        {width === 0 ? null : <Picture drawing={orbitChart(view, width, 'orbit', altitudeIn())} />}
      </div>
      <ul class="orbit-key">
        {key.map(({ label, colour, look }) => (
          <li key={label}>
            {look === 'area' ? (
              <span class="swatch air" />
            ) : (
              <i
                class={`line-sample ${look === 'dashed' ? 'dashed' : label === 'flown' ? 'thick' : ''} ${colour.replace(/^var\(--(.*)\)$/u, 'as-$1')}`}
              />
            )}
            {label}
          </li>
        ))}
      </ul>
      <div class="chart-foot">
        <SaveChart
          name="Orbit"
          review={review}
          picture={() => ({
            drawing: stacked([orbitChart(view, savedSide_px, 'orbit-saved'), keyRow(savedSide_px, 0, key)]),
            title: 'Orbit',
            note: 'in its plane, to scale',
          })}
          csv={null}
        />
      </div>
    </section>
  );
}
