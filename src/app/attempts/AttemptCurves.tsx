import { useMemo } from 'preact/hooks';
import type { Comparison } from '../../attempts/types.ts';
import {
  attemptCurves,
  curvesNote,
  drawnByGroup,
  singleCurves,
  waysUp,
} from '../../exchange/comparisonCurves.ts';
import { CurvePanel } from '../charts/CurvePanel.tsx';
import { setApart } from './AttemptsTable.tsx';

function told(...parts: readonly string[]): string {
  return parts.filter((part) => part !== '').join('; ');
}

/** All attempts' margins on delta-v spent, and their ways up, over one another. */
export function AttemptCurves({ comparison }: { readonly comparison: Comparison }) {
  const apart = setApart.value;
  const { curves, rows, groups, by } = comparison;
  const ways = useMemo(() => waysUp(comparison), [comparison]);
  const margin = (row: number) => curves.margin_m_s[row] ?? [];
  const altitude = (row: number) => ways.altitude_m[row] ?? [];
  const margins = useMemo(() => attemptCurves(comparison, apart, 'margin_m_s', margin), [comparison, apart]);
  const paths = useMemo(() => attemptCurves(comparison, apart, 'altitude_m', altitude), [comparison, apart]);
  const names = groups.length > 6 ? `${groups.length} groups` : groups.map((g) => g.name).join(', ');
  const of = { file: 'attempts', caption: `${rows.length} attempts by ${by}: ${names}` };
  const many = drawnByGroup(comparison);
  return (
    <div class="curve-panels attempts-curves">
      <CurvePanel
        name="Margins on delta-v spent"
        note={told(curvesNote(comparison), 'choose a flight in the table to set it apart')}
        at={curves.spent_m_s}
        x={{ label: 'delta-v spent', unit: 'm/s', scale: 1, column: 'spent_m_s' }}
        y={{ label: 'margin', unit: 'm/s', scale: 1 }}
        curves={margins}
        height={320}
        review={of}
        {...(many ? { saved: () => singleCurves(comparison, 'margin_m_s', margin) } : {})}
      />
      {ways.downrange_m.at(-1) === 0 ? null : (
        <CurvePanel
          name="Ways up"
          note={told('altitude against downrange', curvesNote(comparison))}
          at={ways.downrange_m}
          x={{ label: 'downrange', unit: 'km', scale: 1e-3, column: 'downrange_m' }}
          y={{ label: 'altitude', unit: 'km', scale: 1e-3 }}
          curves={paths}
          height={320}
          review={of}
          {...(many ? { saved: () => singleCurves(comparison, 'altitude_m', altitude) } : {})}
        />
      )}
    </div>
  );
}
