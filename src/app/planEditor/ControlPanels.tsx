import { useMemo } from 'preact/hooks';
import { CurvePanel, type PanelCurve } from '../charts/CurvePanel.tsx';
import { current } from '../state.ts';
import { axisWords } from './columnForms.ts';
import { controlCurves } from './controlCurves.ts';
import { check, curve, sheet } from './editorState.ts';
import { flownControls } from './flownControls.ts';

type Values = readonly (number | null)[];

const axes = {
  time: { unit: 's', scale: 1, column: 'time_s' },
  altitude: { unit: 'km', scale: 1e-3, column: 'altitude_m' },
  speed: { unit: 'm/s', scale: 1, column: 'speed_m_s' },
} as const;

function curvesOf(
  sides: { planned: Values; flown: Values },
  planned: string,
  column: string,
): readonly PanelCurve[] {
  const all: readonly PanelCurve[] = [
    { name: 'flown', values: sides.flown, colour: '--muted', dash: '5 4', column: `${column}_flown` },
    {
      name: planned,
      values: sides.planned,
      colour: '--ink',
      dash: null,
      bold: true,
      column: `${column}_planned`,
    },
  ];
  return all.filter((c) => Array.prototype.some.call(c.values, (v) => v !== null));
}

/** Pitch and throttle as the engine reads them from the rows, before what the open flight flew. */
export function ControlPanels() {
  const axis = sheet.value?.axis ?? 'time';
  const analysis = current.value?.analysis ?? null;
  const flown = useMemo(
    () => (analysis === null ? null : flownControls(analysis, axis)),
    [analysis?.strips, axis],
  );
  const plan = curve.value;
  const planned = (check.value?.faults.length ?? 0) > 0 ? 'planned, as last right' : 'planned';
  const { at, pitch, throttle } = useMemo(() => controlCurves(plan, flown), [plan, flown]);
  const panels = [
    { name: 'Pitch', unit: '°', note: 'above the horizon', sides: pitch, column: 'pitch_deg' },
    { name: 'Throttle', unit: '%', note: 'of full', sides: throttle, column: 'throttle_percent' },
  ];
  return (
    <div class="control-panels">
      {panels.map(({ name, unit, note, sides, column }) => (
        <CurvePanel
          key={name}
          name={name}
          note={note}
          at={at}
          x={{ label: axisWords[axis], ...axes[axis] }}
          y={{ label: name.toLowerCase(), unit, scale: 1 }}
          curves={curvesOf(sides, planned, column)}
          height={210}
          review={analysis?.review ?? null}
        />
      ))}
    </div>
  );
}
