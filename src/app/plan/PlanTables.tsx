import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import type { AgainstPlan, ComparedState, Review } from '../../review/types.ts';
import { formatFigure, NO_FIGURE } from '../../units/figures.ts';
import { Term } from '../parts/Term.tsx';
import { inUnits, shownIn, speedIn } from '../units.ts';

function scaled(value: number | null, scale: number, decimals: number): string {
  return numberText(value === null ? null : value * scale, decimals);
}

function difference({ difference: by }: ComparedState, scale: number, decimals: number): string {
  return by === null ? NO_FIGURE : formatFigure(by * scale, { decimals, signed: true });
}

/** Share of the widest bar that a value takes, %. */
function share(value: number, most: number): number {
  return most === 0 ? 0 : (100 * Math.abs(value)) / most;
}

/** What made the flight dearer than the plan, found by re-flying; the parts add up to the whole. */
export function Contributions({ plan }: { readonly plan: AgainstPlan }) {
  const { contributions, avoidable } = plan;
  const speed = speedIn();
  if (contributions.length === 0) {
    return (
      <section aria-label="What made the difference">
        <h2>What made the difference</h2>
        <p class="instead">
          Not split: it takes a mission card with stages, and a plan that this rocket can fly to its end.
        </p>
      </section>
    );
  }
  const most = Math.max(...contributions.map((c) => Math.abs(c.deltaV_m_s.value ?? 0)));
  const form = shown(avoidable.deltaV_m_s, speed.scale);
  return (
    <section aria-label="What made the difference">
      <h2>
        What made the difference{' '}
        <span class="quiet">by re-flying, {speed.unit}; more than the plan is +</span>
      </h2>
      <table class="figures contributions">
        <thead class="unseen-head">
          <tr>
            <th scope="col">part</th>
            <th scope="col">size</th>
            <th scope="col">{speed.unit}</th>
            <th scope="col" class="more">
              95 % interval
            </th>
            <th scope="col">propellant, kg</th>
          </tr>
        </thead>
        <tbody>
          {contributions.map(({ group, text, deltaV_m_s, propellant_kg }) => (
            <tr key={group}>
              <th scope="row">{text}</th>
              <td class="bar-cell" aria-hidden="true">
                <svg width="100%" height="12" aria-hidden="true">
                  <rect
                    class={(deltaV_m_s.value ?? 0) < 0 ? 'gained' : 'lost'}
                    width={`${share(deltaV_m_s.value ?? 0, most)}%`}
                    height="12"
                  />
                </svg>
              </td>
              <td class="number">
                {deltaV_m_s.value === null
                  ? NO_FIGURE
                  : formatFigure(deltaV_m_s.value * speed.scale, { decimals: form.decimals, signed: true })}
              </td>
              <td class="number more quiet">{intervalText(deltaV_m_s, { ...form, scale: speed.scale })}</td>
              <td class="number quiet">{numberText(propellant_kg.value, 0)} kg</td>
            </tr>
          ))}
          <tr class="sum">
            <th scope="row">together</th>
            <td aria-hidden="true" />
            <td class="number">
              {avoidable.deltaV_m_s.value === null
                ? NO_FIGURE
                : formatFigure(avoidable.deltaV_m_s.value * speed.scale, {
                    decimals: form.decimals,
                    signed: true,
                  })}
            </td>
            <td class="number more quiet">{intervalText(avoidable.deltaV_m_s, form)}</td>
            <td class="number quiet">{numberText(avoidable.propellant_kg.value, 0)} kg</td>
          </tr>
        </tbody>
      </table>
    </section>
  );
}

/** Events planned and flown, with what differs there. */
export function PlanEvents({ plan }: { readonly plan: AgainstPlan }) {
  const height = shownIn('km', 1e-3);
  const speed = speedIn();
  return (
    <section aria-label="Events planned and flown">
      <h2>
        Events planned and flown <span class="quiet">Δ is flown less planned</span>
      </h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section class="wide" aria-label="Table of events planned and flown" tabIndex={0}>
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">event</th>
              <th scope="col" class="number">
                planned <span class="unit">s</span>
              </th>
              <th scope="col" class="number">
                flown <span class="unit">s</span>
              </th>
              <th scope="col" class="number">
                Δ <span class="unit">s</span>
              </th>
              <th scope="col" class="number more">
                Δ altitude <span class="unit">{height.unit}</span>
              </th>
              <th scope="col" class="number more">
                Δ speed <span class="unit">{speed.unit}</span>
              </th>
              <th scope="col" class="number more">
                mass planned <span class="unit">kg</span>
              </th>
              <th scope="col" class="number more">
                flown <span class="unit">kg</span>
              </th>
              <th scope="col" class="number more">
                propellant planned <span class="unit">kg</span>
              </th>
              <th scope="col" class="number more">
                flown <span class="unit">kg</span>
              </th>
              <th scope="col" class="number more">
                Δ <span class="unit">kg</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {plan.events.map((e) => (
              <tr key={`${e.name} ${e.subject ?? ''} ${e.time_s.planned} ${e.time_s.flown}`}>
                <th scope="row">
                  {eventWord(e.name)}
                  {e.subject === null ? null : <span class="quiet"> {e.subject}</span>}
                </th>
                <td class="number">{numberText(e.time_s.planned, 1)}</td>
                <td class="number">{numberText(e.time_s.flown, 1)}</td>
                <td class="number strong-cell">{difference(e.time_s, 1, 1)}</td>
                <td class="number more">{difference(e.altitude_m, height.scale, 1)}</td>
                <td class="number more">{difference(e.speed_m_s, speed.scale, 0)}</td>
                <td class="number more">{numberText(e.mass_kg.planned, 0)}</td>
                <td class="number more">{numberText(e.mass_kg.flown, 0)}</td>
                <td class="number more">{numberText(e.propellant_kg.planned, 0)}</td>
                <td class="number more">{numberText(e.propellant_kg.flown, 0)}</td>
                <td class="number more">{difference(e.propellant_kg, 1, 0)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

const states = [
  ['time_s', 'time', 's', 1, 1],
  ['altitude_m', 'altitude', 'km', 1e-3, 1],
  ['speed_m_s', 'speed', 'm/s', 1, 0],
  ['inertialSpeed_m_s', 'inertial speed', 'm/s', 1, 0],
  ['flightPathAngle_deg', 'flight-path angle', '°', 1, 2],
  ['apoapsisAltitude_m', 'apoapsis', 'km', 1e-3, 1],
  ['periapsisAltitude_m', 'periapsis', 'km', 1e-3, 1],
  ['mass_kg', 'mass', 'kg', 1, 0],
] as const;

/** State at each stage's cutoff, planned and flown. */
export function PlanCutoffs({ plan }: { readonly plan: AgainstPlan }) {
  return (
    <>
      {plan.cutoffs.map(({ subject, states: at }) => (
        <section key={subject} aria-label={`Cutoff of ${subject}`}>
          <h2>
            Cutoff <span class="quiet">{subject}</span>
          </h2>
          <table class="figures">
            <thead>
              <tr>
                <th scope="col">state</th>
                <th scope="col" class="number">
                  planned
                </th>
                <th scope="col" class="number">
                  flown
                </th>
                <th scope="col" class="number">
                  Δ
                </th>
                <th scope="col">unit</th>
              </tr>
            </thead>
            <tbody>
              {states.map(([key, name, given, by, decimals]) => {
                const { unit, scale } = shownIn(given, by);
                return (
                  <tr key={key}>
                    <th scope="row">{name}</th>
                    <td class="number">{scaled(at[key].planned, scale, decimals)}</td>
                    <td class="number">{scaled(at[key].flown, scale, decimals)}</td>
                    <td class="number strong-cell">{difference(at[key], scale, decimals)}</td>
                    <td class="unit">{unit}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </section>
      ))}
    </>
  );
}

const budgetRows = [
  ['spent', 'spent', 'deltaVSpent'],
  ['toGo', 'still to go', 'deltaVToGo'],
  ['projectedTotal', 'projected total', 'projectedTotal'],
  ['margin', 'margin', 'margin'],
] as const;

/** The budget at the end of each ascent, planned and flown. */
export function PlanBudget({ review }: { readonly review: Review }) {
  const { againstPlan, budget } = review;
  const { scale, unit } = speedIn();
  if (againstPlan === null) return null;
  return (
    <section aria-label="Budget planned and flown">
      <h2>
        Budget <span class="quiet">at the end of each ascent, {unit}</span>
      </h2>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">figure</th>
            <th scope="col" class="number">
              planned
            </th>
            <th scope="col" class="number">
              flown
            </th>
            <th scope="col" class="number more">
              95 %
            </th>
            <th scope="col" class="number">
              Δ
            </th>
          </tr>
        </thead>
        <tbody>
          {budgetRows.map(([key, name, figureName]) => {
            const planned = againstPlan.planned[key];
            const figure = budget[figureName];
            const by = planned === null || figure.value === null ? null : figure.value - planned;
            const form = shown(figure, scale);
            return (
              <tr key={key}>
                <th scope="row">
                  <Term label={name} />
                </th>
                <td class="number">{scaled(planned, scale, form.decimals)}</td>
                <td class="number">{valueText(figure, form)}</td>
                <td class="number more quiet">{intervalText(figure, form)}</td>
                <td class="number strong-cell">
                  {difference({ planned, flown: figure.value, difference: by }, scale, form.decimals)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

/** What the plan leaves open, and what was taken for it. */
export function PlanAssumed({ plan }: { readonly plan: AgainstPlan }) {
  if (plan.plan.assumed.length === 0) return null;
  return (
    <section aria-label="Assumed of the plan">
      <h2>Assumed of the plan</h2>
      <ul class="plain-list">
        {plan.plan.assumed.map((text) => (
          <li key={text}>{inUnits(text)}</li>
        ))}
      </ul>
    </section>
  );
}
