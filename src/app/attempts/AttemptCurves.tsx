import { useMemo } from 'preact/hooks';
import type { Comparison } from '../../attempts/types.ts';
import { valueAt } from '../../exchange/sampleAt.ts';
import { CurvePanel, type PanelCurve } from '../charts/CurvePanel.tsx';
import { setApart } from './AttemptsTable.tsx';

/** Looks of the groups: colour and dash together, so that neither has to be told alone. */
const looks = [
  { colour: '--reached', dash: null },
  { colour: '--short', dash: '7 4' },
  { colour: '--cause-drag', dash: '2 3' },
  { colour: '--cause-steering', dash: '9 3 2 3' },
  { colour: '--cause-pressure', dash: '4 2' },
  { colour: '--cause-frame', dash: '12 4' },
] as const;
const pathPoints = 120;

function curvesOf(
  { rows, groups }: Comparison,
  apart: string | null,
  column: string,
  values: (row: number) => ArrayLike<number | null>,
): PanelCurve[] {
  const place = new Map(groups.map((g, i) => [g.name, i]));
  const curves = rows.map((row, i): PanelCurve => {
    const look = looks[(place.get(row.group) ?? 0) % looks.length] ?? looks[0];
    return { name: row.name, keyed: row.group, column: `${column} ${row.name}`, values: values(i), ...look };
  });
  const set = curves.find((c) => c.name === apart);
  if (set === undefined) return curves;
  return [
    ...curves.filter((c) => c !== set),
    { ...set, keyed: set.name, colour: '--ink', dash: null, bold: true },
  ];
}

/** The ways up on one axis of distance. */
function pathsOn({ paths }: Comparison) {
  const far = Math.max(0, ...paths.map((p) => p.downrange_m.at(-1) ?? 0));
  const downrange_m = Array.from({ length: pathPoints + 1 }, (_, k) => (far * k) / pathPoints);
  const altitude_m = paths.map((p) => downrange_m.map((d) => valueAt(p.downrange_m, p.altitude_m, d)));
  return { downrange_m, altitude_m };
}

/** All attempts' margins on delta-v spent, and their ways up, over one another. */
export function AttemptCurves({ comparison }: { readonly comparison: Comparison }) {
  const apart = setApart.value;
  const paths = useMemo(() => pathsOn(comparison), [comparison]);
  const { curves } = comparison;
  const margins = useMemo(
    () => curvesOf(comparison, apart, 'margin_m_s', (i) => curves.margin_m_s[i] ?? []),
    [comparison, apart, curves],
  );
  const ways = useMemo(
    () => curvesOf(comparison, apart, 'altitude_m', (i) => paths.altitude_m[i] ?? []),
    [comparison, apart, paths],
  );
  return (
    <div class="curve-panels attempts-curves">
      <CurvePanel
        name="Margins on delta-v spent"
        note="choose a flight in the table to set it apart"
        at={curves.spent_m_s}
        x={{ label: 'delta-v spent', unit: 'm/s', scale: 1, column: 'spent_m_s' }}
        y={{ label: 'margin', unit: 'm/s', scale: 1 }}
        curves={margins}
        height={320}
        review={null}
      />
      {paths.downrange_m.at(-1) === 0 ? null : (
        <CurvePanel
          name="Ways up"
          note="altitude against downrange"
          at={paths.downrange_m}
          x={{ label: 'downrange', unit: 'km', scale: 1e-3, column: 'downrange_m' }}
          y={{ label: 'altitude', unit: 'km', scale: 1e-3 }}
          curves={ways}
          height={300}
          review={null}
        />
      )}
    </div>
  );
}
