import type { DeviationCurve, Review } from '../../review/types.ts';
import { CurvePanel, type PanelCurve } from '../charts/CurvePanel.tsx';

function pair(
  planned: readonly (number | null)[],
  flown: readonly (number | null)[],
  column: string,
): readonly PanelCurve[] {
  return [
    { name: 'planned', values: planned, colour: '--muted', dash: '5 4', column: `${column}_planned` },
    { name: 'flown', values: flown, colour: '--ink', dash: null, column: `${column}_flown` },
  ];
}

const quantities: Readonly<
  Record<
    DeviationCurve['quantity'],
    { readonly name: string; readonly unit: string; readonly scale: number; readonly note: string }
  >
> = {
  pitch_deg: { name: 'Pitch', unit: '°', scale: 1, note: 'above the horizon, at equal altitude' },
  throttle: { name: 'Throttle', unit: '%', scale: 100, note: 'at equal time' },
  thrustToWeight: { name: 'Thrust-to-weight', unit: '', scale: 1, note: 'at equal time' },
  dynamicPressure_Pa: { name: 'Dynamic pressure', unit: 'kPa', scale: 1e-3, note: 'at equal altitude' },
};

const axes = {
  altitude_m: { label: 'altitude', unit: 'km', scale: 1e-3, column: 'altitude_m' },
  time_s: { label: 'time from lift-off', unit: 's', scale: 1, column: 'time_s' },
} as const;

/** Margin on delta-v spent, and the controls, flown and planned. */
export function PlanCurves({ review }: { readonly review: Review }) {
  const { againstPlan } = review;
  if (againstPlan === null) return null;
  const { margin, deviations } = againstPlan;
  return (
    <div class="curve-panels">
      <CurvePanel
        name="Margin on delta-v spent"
        note="a step down is waste; where nothing is wasted it is level"
        at={margin.spent}
        x={{ label: 'delta-v spent', unit: 'm/s', scale: 1, column: 'spent_m_s' }}
        y={{ label: 'margin', unit: 'm/s', scale: 1 }}
        curves={pair(margin.planned, margin.flown, 'margin_m_s')}
        review={review}
      />
      <div class="curve-pair">
        {deviations.map(({ quantity, axis, at, planned, flown }) => {
          const { name, unit, scale, note } = quantities[quantity];
          return (
            <CurvePanel
              key={quantity}
              name={name}
              note={note}
              at={at}
              x={axes[axis]}
              y={{ label: name.toLowerCase(), unit, scale }}
              curves={pair(planned, flown, quantity)}
              height={220}
              review={review}
            />
          );
        })}
      </div>
    </div>
  );
}
