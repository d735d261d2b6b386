import type { AgainstPlan, ComparedState, Review } from '../../review/types.ts';
import { formatFigure } from '../../units/figures.ts';
import type { ShownUnits } from '../../units/unitSets.ts';
import { intervalText, numberText, shown, valueText } from '../figureText.ts';
import { spanText } from '../readingText.ts';
import { sentence, unbroken } from '../sentence.ts';
import { type Drawing, draw } from './drawing.ts';
import { section, table } from './reportTables.ts';

/** What cost most, dearest first; null while nothing was found. */
export function findingsSection({ findings }: Review, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  return section(
    'What cost most',
    'dearest first',
    findings.map((f) =>
      draw(
        'div',
        { class: 'find' },
        draw(
          'h3',
          {},
          draw(
            'span',
            {},
            unbroken(f.text),
            draw('span', { class: 'quiet' }, ` ${spanText(f.start_s, f.end_s)}`),
          ),
          f.cost_m_s.value === null
            ? null
            : draw('span', {}, `${valueText(f.cost_m_s, shown(f.cost_m_s, speed.scale))} ${speed.unit}`),
        ),
        draw('p', {}, unbroken([f.evidence, f.advice].filter((text) => text !== '').join(' '))),
      ),
    ),
  );
}

/** Why the flight did not reach orbit, and the smallest changes that would have; null where that is not known. */
export function whyNotSection({ whyNot }: Review): Drawing | null {
  if (whyNot === null) return null;
  // The text tells the first of them.
  const others = whyNot.changes.slice(1).map(({ text }) => draw('li', {}, unbroken(sentence(`or ${text}`))));
  return section(
    'What would have reached orbit',
    '',
    draw('p', { class: 'notes' }, unbroken(whyNot.text)),
    others.length === 0 ? null : draw('ul', { class: 'notes' }, others),
  );
}

type StateName = keyof AgainstPlan['cutoffs'][number]['states'];

const states: readonly (readonly [StateName, string, number, string, number])[] = [
  ['time_s', 'time', 1, 's', 1],
  ['altitude_m', 'altitude', 1e-3, 'km', 1],
  ['speed_m_s', 'speed', 1, 'm/s', 0],
  ['inertialSpeed_m_s', 'inertial speed', 1, 'm/s', 0],
  ['flightPathAngle_deg', 'flight-path angle', 1, '°', 2],
  ['apoapsisAltitude_m', 'apoapsis', 1e-3, 'km', 1],
  ['periapsisAltitude_m', 'periapsis', 1e-3, 'km', 1],
  ['mass_kg', 'mass', 1, 'kg', 0],
];

/** Deviations from the plan: what they cost, and the states at the cutoffs; null without a plan. */
export function planSections({ againstPlan }: Review, units: ShownUnits): (Drawing | null)[] {
  const speed = units.shownIn('m/s', 1);
  if (againstPlan === null) return [];
  const { plan, avoidable, contributions, cutoffs } = againstPlan;
  const { deltaV_m_s: cost, propellant_kg } = avoidable;
  const costText =
    cost.value === null
      ? ''
      : `Projected total flown less planned: ${valueText(cost, shown(cost, speed.scale))} ${speed.unit} ${intervalText(cost, shown(cost, speed.scale))}${
          propellant_kg.value === null ? '' : `, ${numberText(propellant_kg.value, 0)} kg of propellant`
        }`;
  const ranked = contributions.toSorted(
    (a, b) => Math.abs(b.deltaV_m_s.value ?? 0) - Math.abs(a.deltaV_m_s.value ?? 0),
  );
  return [
    section(
      'Against plan',
      plan.name,
      [plan.text, costText, ...plan.assumed]
        .filter((text) => text !== '')
        .map((text) => draw('p', { class: 'under' }, sentence(text))),
      ranked.length === 0
        ? null
        : table(
            [
              { head: 'deviation', class: '' },
              { head: speed.unit, class: 'number' },
              { head: '95 %', class: 'number quiet more' },
              { head: 'kg', class: 'number' },
            ],
            ranked.map(({ text, deltaV_m_s, propellant_kg: kg }) => [
              text,
              valueText(deltaV_m_s, shown(deltaV_m_s, speed.scale)),
              intervalText(deltaV_m_s, shown(deltaV_m_s, speed.scale)),
              valueText(kg, { scale: 1, decimals: 0 }),
            ]),
          ),
    ),
    cutoffTables(cutoffs, units),
  ];
}

/** States at the cutoffs, planned and flown, two tables side by side where there is room. */
function cutoffTables(cutoffs: AgainstPlan['cutoffs'], units: ShownUnits): Drawing | null {
  if (cutoffs.length === 0) return null;
  return draw(
    'div',
    { class: 'pair' },
    cutoffs.map((cutoff) =>
      section(
        `Cutoff of ${cutoff.subject}`,
        'flown less planned',
        table(
          [
            { head: '', class: '' },
            { head: 'planned', class: 'number' },
            { head: 'flown', class: 'number' },
            { head: 'difference', class: 'number' },
            { head: '', class: 'quiet' },
          ],
          states
            .filter(([key]) => known(cutoff.states[key]))
            .map(([key, name, inSI, given, places]) => {
              const { unit, scale } = units.shownIn(given, inSI);
              const decimals =
                unit === given ? places : Math.max(0, places - Math.round(Math.log10(scale / inSI)));
              const { planned, flown, difference } = cutoff.states[key];
              const written = (value: number | null) =>
                numberText(value === null ? null : value * scale, decimals);
              return [
                name,
                written(planned),
                written(flown),
                difference === null ? '' : formatFigure(difference * scale, { decimals, signed: true }),
                unit,
              ];
            }),
        ),
      ),
    ),
  );
}

function known({ planned, flown }: ComparedState): boolean {
  return planned !== null || flown !== null;
}
