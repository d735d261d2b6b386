import { Fragment } from 'preact';
import { numberText, shown, valueText } from '../../exchange/figureText.ts';
import type { OrbitWork } from '../../review/orbitWork/types.ts';
import type { Figure } from '../../review/types.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import { timeText } from '../figureText.ts';
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
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="wide" aria-label="Table of burns in orbit" tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">burn</th>
              <th scope="col" class="number">
                at <span class="unit">s</span>
              </th>
              <th scope="col" class="number">
                spent
              </th>
              <th scope="col" class="number">
                needed
              </th>
              <th scope="col" class="number">
                efficiency <span class="unit">%</span>
              </th>
              <th scope="col" class="number">
                lost to place
              </th>
              <th scope="col" class="number">
                lost to length
              </th>
              <th scope="col" class="number">
                made at <span class="unit">° from periapsis</span>
              </th>
              <th scope="col">best made at</th>
            </tr>
          </thead>
          <tbody>
            {work.burns.map((b) => (
              <Fragment key={b.start_s}>
                <tr class="explained">
                  <th scope="row">
                    {kindText(b.kind)} <span class="quiet">{b.stage}</span>
                  </th>
                  <td class="number">{numberText(b.start_s, 0)}</td>
                  <td class="number">{cell(b.deltaV_m_s)}</td>
                  <td class="number">{cell(b.optimum_m_s)}</td>
                  <td class="number">{valueText(b.efficiency, { scale: 100, decimals: 0 })}</td>
                  <td class="number">{cell(b.placeLoss_m_s, 1)}</td>
                  <td class="number">{cell(b.finiteBurnLoss_m_s, 1)}</td>
                  <td class="number">
                    {b.trueAnomaly_deg === null ? 'circle' : numberText(b.trueAnomaly_deg, 0)}
                  </td>
                  <td>
                    {b.bestAt ?? 'anywhere'}
                    {b.twoImpulses ? ', two impulses' : ''}
                  </td>
                </tr>
                <tr>
                  <td class="told" colSpan={9}>
                    {inUnits(b.text)}
                  </td>
                </tr>
              </Fragment>
            ))}
          </tbody>
        </table>
      </section>
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
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="wide" aria-label="Table of orbits" tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">after</th>
              <th scope="col" class="number">
                from <span class="unit">s</span>
              </th>
              <th scope="col" class="number">
                apoapsis <span class="unit">{altitude.unit}</span>
              </th>
              <th scope="col" class="number">
                periapsis <span class="unit">{altitude.unit}</span>
              </th>
              <th scope="col" class="number">
                inclination <span class="unit">°</span>
              </th>
              <th scope="col" class="number">
                period <span class="unit">min</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {work.history.map(({ time_s, after, orbit }) => (
              <tr key={time_s}>
                <th scope="row">{kindText(after)}</th>
                <td class="number">{timeText(time_s).replace(/\ss$/u, '')}</td>
                <td class="number">{valueText(orbit.apoapsisAltitude_m, high)}</td>
                <td class="number">{valueText(orbit.periapsisAltitude_m, high)}</td>
                <td class="number">
                  {orbit.inclination_deg.value === null
                    ? NO_FIGURE
                    : valueText(orbit.inclination_deg, { scale: 1, decimals: 2 })}
                </td>
                <td class="number">{valueText(orbit.period_s, { scale: 1 / 60, decimals: 1 })}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
