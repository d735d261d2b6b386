import type { Review } from '../../review/types.ts';
import { FigureTable } from './FigureTable.tsx';
import { TermsButton } from './Term.tsx';

/** The orbit of METHODS §4 at the last cutoff of the ascent. */
export function OrbitTable({ review }: { readonly review: Review }) {
  const { atCutoff, cutoff_s } = review.orbit;
  return (
    <section aria-label="Orbit at cutoff">
      <div class="head-line">
        <h2>
          Orbit <span class="quiet">{cutoff_s === null ? 'at the end' : 'at cutoff'}</span>
        </h2>
        <TermsButton
          of="the orbit"
          labels={['apoapsis', 'periapsis', 'eccentricity', 'inclination', 'period']}
        />
      </div>
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
