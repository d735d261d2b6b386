import { useMemo } from 'preact/hooks';
import type { Analysis } from '../../review/types.ts';
import { CurvePanel } from '../charts/CurvePanel.tsx';
import { entryCurves } from './entryCurves.ts';

const altitude = { label: 'altitude', unit: 'km', scale: 1e-3, column: 'altitude_m' } as const;

/** Speed and dynamic pressure on the way down, over altitude. */
export function EntryPanels({ analysis }: { readonly analysis: Analysis }) {
  const curves = useMemo(() => entryCurves(analysis), [analysis]);
  if (curves === null) return null;
  const { altitude_m, speed_m_s, dynamicPressure_Pa } = curves;
  const flown = { name: 'flown', colour: '--ink', dash: null } as const;
  return (
    <div class="curve-panels">
      <CurvePanel
        name="Speed on the way down"
        note="at each altitude, read from right to left"
        at={altitude_m}
        x={altitude}
        y={{ label: 'speed', unit: 'm/s', scale: 1 }}
        curves={[{ ...flown, values: speed_m_s, column: 'speed_m_s' }]}
        height={200}
        review={analysis.review}
      />
      {dynamicPressure_Pa.every((v) => v === null) ? null : (
        <CurvePanel
          name="Dynamic pressure on the way down"
          note="at each altitude"
          at={altitude_m}
          x={altitude}
          y={{ label: 'dynamic pressure', unit: 'kPa', scale: 1e-3 }}
          curves={[{ ...flown, values: dynamicPressure_Pa, column: 'dynamicPressure_Pa' }]}
          height={200}
          review={analysis.review}
        />
      )}
    </div>
  );
}
