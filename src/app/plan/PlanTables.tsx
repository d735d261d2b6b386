import { cutoffStates } from '../../exchange/cutoffStates.ts';
import { intervalText, numberText, shown, valueText } from '../../exchange/figureText.ts';
import { eventWord } from '../../exchange/report/eventLabels.ts';
import type { AgainstPlan, ComparedState, Review } from '../../review/types.ts';
import { formatFigure, NO_FIGURE } from '../../units/figures.ts';
import { ColumnTable, type TableColumn } from '../parts/ColumnTable.tsx';
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

type PlanEvent = AgainstPlan['events'][number];

/** Events planned and flown, with what differs there. */
export function PlanEvents({ plan }: { readonly plan: AgainstPlan }) {
  const height = shownIn('km', 1e-3);
  const speed = speedIn();
  const number = (
    head: string,
    unit: string,
    cell: (event: PlanEvent) => string,
    look = 'more',
  ): TableColumn<PlanEvent> => ({ head, unit, kind: 'number', look, cell });
  return (
    <section aria-label="Events planned and flown">
      <h2>
        Events planned and flown <span class="quiet">Δ is flown less planned</span>
      </h2>
      <ColumnTable
        scrolls="Table of events planned and flown"
        rows={plan.events}
        keyOf={(e) => `${e.name} ${e.subject ?? ''} ${e.time_s.planned} ${e.time_s.flown}`}
        columns={[
          {
            head: 'event',
            cell: (e) => (
              <>
                {eventWord(e.name)}
                {e.subject === null ? null : <span class="quiet"> {e.subject}</span>}
              </>
            ),
          },
          number('planned', 's', (e) => numberText(e.time_s.planned, 1), ''),
          number('flown', 's', (e) => numberText(e.time_s.flown, 1), ''),
          { ...number('Δ', 's', (e) => difference(e.time_s, 1, 1), ''), cellLook: 'strong-cell' },
          number('Δ altitude', height.unit, (e) => difference(e.altitude_m, height.scale, 1)),
          number('Δ speed', speed.unit, (e) => difference(e.speed_m_s, speed.scale, 0)),
          number('mass planned', 'kg', (e) => numberText(e.mass_kg.planned, 0)),
          number('flown', 'kg', (e) => numberText(e.mass_kg.flown, 0)),
          number('propellant planned', 'kg', (e) => numberText(e.propellant_kg.planned, 0)),
          number('flown', 'kg', (e) => numberText(e.propellant_kg.flown, 0)),
          number('Δ', 'kg', (e) => difference(e.propellant_kg, 1, 0)),
        ]}
      />
    </section>
  );
}

/** State at each stage's cutoff, planned and flown. */
export function PlanCutoffs({ plan }: { readonly plan: AgainstPlan }) {
  const shownStates = cutoffStates.map(([key, name, given, by, decimals]) => ({
    key,
    name,
    decimals,
    ...shownIn(given, by),
  }));
  return (
    <>
      {plan.cutoffs.map(({ subject, states: at }) => (
        <section key={subject} aria-label={`Cutoff of ${subject}`}>
          <h2>
            Cutoff <span class="quiet">{subject}</span>
          </h2>
          <ColumnTable
            rows={shownStates}
            keyOf={(s) => s.key}
            columns={[
              { head: 'state', cell: (s) => s.name },
              {
                head: 'planned',
                kind: 'number',
                cell: (s) => scaled(at[s.key].planned, s.scale, s.decimals),
              },
              { head: 'flown', kind: 'number', cell: (s) => scaled(at[s.key].flown, s.scale, s.decimals) },
              {
                head: 'Δ',
                kind: 'number',
                cellLook: 'strong-cell',
                cell: (s) => difference(at[s.key], s.scale, s.decimals),
              },
              { head: 'unit', look: 'unit', cell: (s) => s.unit },
            ]}
          />
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
  const rows = budgetRows.map(([key, name, figureName]) => {
    const planned = againstPlan.planned[key];
    const figure = budget[figureName];
    const by = planned === null || figure.value === null ? null : figure.value - planned;
    return { name, planned, figure, by, form: shown(figure, scale) };
  });
  return (
    <section aria-label="Budget planned and flown">
      <h2>
        Budget <span class="quiet">at the end of each ascent, {unit}</span>
      </h2>
      <ColumnTable
        rows={rows}
        keyOf={(r) => r.name}
        columns={[
          { head: 'figure', cell: (r) => <Term label={r.name} /> },
          { head: 'planned', kind: 'number', cell: (r) => scaled(r.planned, scale, r.form.decimals) },
          { head: 'flown', kind: 'number', cell: (r) => valueText(r.figure, r.form) },
          {
            head: '95 %',
            kind: 'number',
            look: 'more',
            cellLook: 'quiet',
            cell: (r) => intervalText(r.figure, r.form),
          },
          {
            head: 'Δ',
            kind: 'number',
            cellLook: 'strong-cell',
            cell: (r) =>
              difference(
                { planned: r.planned, flown: r.figure.value, difference: r.by },
                scale,
                r.form.decimals,
              ),
          },
        ]}
      />
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
