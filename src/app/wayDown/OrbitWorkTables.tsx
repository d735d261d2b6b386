import { numberText, shown, valueText } from '../../exchange/figureText.ts';
import { unbroken } from '../../exchange/sentence.ts';
import type { OrbitWork } from '../../review/orbitWork/types.ts';
import type { Figure } from '../../review/types.ts';
import { timeText } from '../figureText.ts';
import { ColumnTable } from '../parts/ColumnTable.tsx';
import { FigureTable } from '../parts/FigureTable.tsx';
import { altitudeIn, inUnits, speedIn } from '../units.ts';

function kindText(kind: string): string {
  return kind.replaceAll('-', ' ');
}

/** Burns in orbit weighed against the impulses that would have done the same. */
export function OrbitBurns({ work }: { readonly work: OrbitWork }) {
  const speed = speedIn();
  const cell = (figure: Figure, decimals?: number) =>
    valueText(figure, decimals === undefined ? shown(figure, speed.scale) : { scale: speed.scale, decimals });
  return (
    <section aria-label="Burns in orbit">
      <h2>
        Burns in orbit{' '}
        <span class="quiet">needed = the cheapest impulses that do the same; {speed.unit}</span>
      </h2>
      <ColumnTable
        scrolls="Table of burns in orbit"
        rows={work.burns}
        keyOf={(b) => b.start_s}
        told={(b) => unbroken(inUnits(b.text))}
        columns={[
          {
            head: 'burn',
            cell: (b) => (
              <>
                {kindText(b.kind)} <span class="quiet">{b.stage}</span>
              </>
            ),
          },
          { head: 'at', unit: 's', kind: 'number', cell: (b) => numberText(b.start_s, 0) },
          { head: 'spent', kind: 'number', cell: (b) => cell(b.deltaV_m_s) },
          { head: 'needed', kind: 'number', cell: (b) => cell(b.optimum_m_s) },
          {
            head: 'efficiency',
            unit: '%',
            kind: 'number',
            cell: (b) => valueText(b.efficiency, { scale: 100, decimals: 0 }),
          },
          { head: 'lost to place', kind: 'number', cell: (b) => cell(b.placeLoss_m_s, 1) },
          { head: 'lost to length', kind: 'number', cell: (b) => cell(b.finiteBurnLoss_m_s, 1) },
          {
            head: 'made at',
            unit: '° from periapsis',
            kind: 'number',
            cell: (b) => (b.trueAnomaly_deg === null ? 'circle' : numberText(b.trueAnomaly_deg, 0)),
          },
          {
            head: 'best made at',
            cell: (b) => `${b.bestAt ?? 'anywhere'}${b.twoImpulses ? ', two impulses' : ''}`,
          },
        ]}
      />
      <div class="half">
        <FigureTable
          lines={[
            { label: 'spent in orbit', figure: work.deltaV_m_s, unit: 'm/s', reasoned: true },
            { label: 'needed for it', figure: work.optimum_m_s, unit: 'm/s', reasoned: true },
          ]}
        />
      </div>
    </section>
  );
}

/** The orbit after the ascent and after each burn. */
export function OrbitHistory({ work }: { readonly work: OrbitWork }) {
  const altitude = altitudeIn();
  const high = { scale: altitude.scale, decimals: 1 };
  return (
    <section aria-label="History of the orbit">
      <h2>History of the orbit</h2>
      <ColumnTable
        scrolls="Table of orbits"
        rows={work.history}
        keyOf={(h) => h.time_s}
        columns={[
          { head: 'after', cell: (h) => kindText(h.after) },
          {
            head: 'from',
            unit: 's',
            kind: 'number',
            cell: (h) => timeText(h.time_s).replace(/\ss$/u, ''),
          },
          {
            head: 'apoapsis',
            unit: altitude.unit,
            kind: 'number',
            cell: (h) => valueText(h.orbit.apoapsisAltitude_m, high),
          },
          {
            head: 'periapsis',
            unit: altitude.unit,
            kind: 'number',
            cell: (h) => valueText(h.orbit.periapsisAltitude_m, high),
          },
          {
            head: 'inclination',
            unit: '°',
            kind: 'number',
            cell: (h) => valueText(h.orbit.inclination_deg, { scale: 1, decimals: 2 }),
          },
          {
            head: 'period',
            unit: 'min',
            kind: 'number',
            cell: (h) => valueText(h.orbit.period_s, { scale: 1 / 60, decimals: 1 }),
          },
        ]}
      />
    </section>
  );
}
