import type { Review } from '../../review/types.ts';
import { FigureTable } from './FigureTable.tsx';

/** The orbit of METHODS §4 at the last cutoff of the ascent. */
export function OrbitTable({ review }: { readonly review: Review }) {
  const { atCutoff, cutoff_s } = review.orbit;
  return (
    <section aria-label="Orbit at cutoff">
      <h2>
        Orbit <span class="quiet">{cutoff_s === null ? 'at the end' : 'at cutoff'}</span>
      </h2>
      <FigureTable
        lines={[
          { label: 'apoapsis', figure: atCutoff.apoapsisAltitude_m, unit: 'km', scale: 1e-3 },
          { label: 'periapsis', figure: atCutoff.periapsisAltitude_m, unit: 'km', scale: 1e-3 },
          { label: 'eccentricity', figure: atCutoff.eccentricity, unit: '', decimals: 4 },
          { label: 'inclination', figure: atCutoff.inclination_deg, unit: '°' },
          { label: 'period', figure: atCutoff.period_s, unit: 'min', scale: 1 / 60 },
        ]}
      />
    </section>
  );
}
