import type { Figure, Review } from '../../review/types.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import type { ShownUnits } from '../../units/unitSets.ts';
import { budgetOrder } from '../budgetText.ts';
import {
  assumptionTexts,
  intervalText,
  massForm,
  numberText,
  type Shown,
  shown,
  valueText,
} from '../figureText.ts';
import { orbitRows } from '../flightText.ts';
import { timeOrigin, timeText } from '../readingText.ts';
import { sentence, unbroken } from '../sentence.ts';
import { causes } from './causes.ts';
import { type Drawing, draw } from './drawing.ts';
import { eventWord } from './eventLabels.ts';
import { ledgerParts } from './ledgerParts.ts';

/** A column's head and how its cells stand; `more` columns give way on a narrow screen. */
interface Column {
  readonly head: string;
  readonly class: string;
}

type Cell = Drawing | string;

const number = 'number';
const interval = 'number quiet more';
const remark = 'quiet more';

/** A table whose rows begin with their own heading. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  look: (row: number) => string = () => '',
): Drawing {
  const named = (name: string) => (name === '' ? {} : { class: name });
  const heads = columns.map((c) =>
    c.head === '' ? draw('td', {}) : draw('th', { scope: 'col', ...named(c.class) }, c.head),
  );
  const body = rows.map((cells, r) =>
    draw(
      'tr',
      named(look(r)),
      cells.map((cell, c) =>
        c === 0
          ? draw('th', { scope: 'row', ...named(columns[c]?.class ?? '') }, cell)
          : draw('td', named(columns[c]?.class ?? ''), cell),
      ),
    ),
  );
  const head = columns.some((c) => c.head !== '') ? draw('thead', {}, draw('tr', {}, heads)) : null;
  return draw('table', {}, head, draw('tbody', {}, body));
}

/** A section with its heading and a remark beside it; null where it would be empty. */
export function section(
  title: string,
  aside: string,
  ...content: readonly (Drawing | null | readonly (Drawing | null)[])[]
): Drawing | null {
  const told = content.flat().filter((c) => c !== null);
  if (told.length === 0) return null;
  const quiet = aside === '' ? null : draw('span', { class: 'quiet' }, ` ${aside}`);
  return draw('section', {}, draw('h2', {}, title, quiet), told);
}

/** A label with what assumptions could move its figure by under it. */
function named(label: Cell | readonly Cell[], figure: Figure, form: Shown, unit: string): Drawing {
  const moves = assumptionTexts(figure, form).map((text) =>
    draw('div', { class: 'quiet moves' }, unbroken(`${text} ${unit}`.trimEnd())),
  );
  return draw('div', {}, label, moves);
}

function figureCells(figure: Figure, form: Shown): Cell[] {
  return [valueText(figure, form), intervalText(figure, form)];
}

/** The ledger in the ground frame, with the inertial frame's figures beside it. */
export function ledgerTable({ ledger }: Review, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  const { ground, inertial, rotationHelp, headingReading, start_s, end_s } = ledger;
  if (ground.ideal.value === null && ground.speedGained.value === null) return null;
  const { taken } = ledgerParts(ground);
  const share = (key: string) => {
    const part = ground.ideal.value === null ? undefined : taken.find((p) => p.cause.key === key);
    return part === undefined ? '' : `${numberText(100 * part.share, 1)} %`;
  };
  const line = (label: Cell | Cell[], figure: Figure, other: Figure | null, part: string, basis: string) => [
    named(label, figure, shown(figure, speed.scale), speed.unit),
    ...figureCells(figure, shown(figure, speed.scale)),
    part,
    other === null ? '' : valueText(other, shown(other, speed.scale)),
    basis,
  ];
  const entries = causes.filter(({ key }) => key !== 'holdDown' || ground.holdDown.value !== 0);
  const rows = [
    line('ideal, what the engines gave', ground.ideal, inertial.ideal, '', ground.ideal.basis),
    ...entries.map(({ key, label, swatch }) =>
      line(
        [draw('span', { class: `swatch ${swatch}` }), label],
        ground[key],
        inertial[key],
        share(key),
        key === 'unexplained' ? 'remainder' : ground[key].basis,
      ),
    ),
    line('rotation’s help, on top', rotationHelp, null, '', rotationHelp.basis),
  ];
  return section(
    'Ledger',
    `${speed.unit}, ${timeText(start_s)} to ${timeText(end_s)}`,
    table(
      [
        { head: 'entry', class: '' },
        { head: 'ground frame', class: number },
        { head: '95 %', class: interval },
        { head: 'share', class: 'number more' },
        { head: 'inertial frame', class: 'number more' },
        { head: 'basis', class: remark },
      ],
      rows,
      (r) => (r === 0 ? 'sum' : ''),
    ),
    headingReading === null ? null : draw('p', { class: 'under' }, sentence(headingReading)),
  );
}

const figureColumns = (unit: string): Column[] => [
  { head: '', class: '' },
  { head: unit, class: number },
  { head: '95 %', class: interval },
  { head: 'basis', class: remark },
];

/** What was spent, needed and left at the end of the ascent. */
export function budgetTable({ budget }: Review, units: ShownUnits): Drawing | null {
  const { unit, scale } = units.shownIn('m/s', 1);
  const known = budgetOrder.filter(([key]) => budget[key].value !== null);
  if (known.length === 0) return null;
  const rows = known.map(([key, name]) => {
    const figure = budget[key];
    const form = shown(figure, scale);
    return [named(name, figure, form, unit), ...figureCells(figure, form), figure.basis];
  });
  return section('Budget', 'at the end of the ascent', table(figureColumns(unit), rows));
}

/** The orbit's elements; null where none is known. */
export function orbitTable({ orbit }: Review, units: ShownUnits): Drawing | null {
  const known = orbitRows.filter(([key]) => orbit.atCutoff[key].value !== null);
  if (known.length === 0) return null;
  const moment = orbit.cutoff_s === null ? 'at the end of the ascent' : 'at cutoff';
  const elements = table(
    [...figureColumns('').slice(0, 2), { head: '', class: 'quiet' }, ...figureColumns('').slice(2)],
    known.map(([key, name, inSI, given]) => {
      const { unit, scale } = units.shownIn(given, inSI);
      const figure = orbit.atCutoff[key];
      const form = key === 'eccentricity' ? { scale, decimals: 5 } : shown(figure, scale);
      const [value = '', half = ''] = figureCells(figure, form);
      return [named(name, figure, form, unit), value, unit, half, figure.basis];
    }),
  );
  return section('Orbit', moment, elements);
}

/** Burns in order of time. */
export function burnsTable({ burns }: Review, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  if (burns.length === 0) return null;
  const rows = burns.map((burn) => [
    burn.ascent ? burn.stage : `${burn.stage} (after the ascent)`,
    numberText(burn.start_s, 1),
    numberText(burn.end_s, 1),
    ...figureCells(burn.deltaV, shown(burn.deltaV, speed.scale)),
    valueText(burn.efficiency, { scale: 100, decimals: 0 }),
    valueText(burn.propellant_kg, massForm(burn.propellant_kg)),
  ]);
  return section(
    'Burns',
    '',
    table(
      [
        { head: 'stage', class: '' },
        { head: 'from s', class: number },
        { head: 'to s', class: number },
        { head: speed.unit, class: number },
        { head: '95 %', class: interval },
        { head: 'useful %', class: 'number more' },
        { head: 'used kg', class: 'number more' },
      ],
      rows,
    ),
  );
}

/** Events in order of time; a column for the plan only where there is one. */
export function eventsTable(review: Review, units: ShownUnits): Drawing | null {
  const { events } = review;
  const altitude = units.shownIn('km', 1e-3);
  const speed = units.shownIn('m/s', 1);
  const decimals = altitude.unit === 'km' ? 1 : 0;
  if (events.length === 0) return null;
  const planned = events.some((e) => e.planned_s !== null);
  return section(
    'Events',
    `s from ${timeOrigin(review)}`,
    table(
      [
        { head: 'event', class: '' },
        { head: 's', class: number },
        ...(planned ? [{ head: 'planned', class: number }] : []),
        { head: `altitude ${altitude.unit}`, class: number },
        { head: `speed ${speed.unit}`, class: 'number more' },
      ],
      events.map((e) => [
        e.subject === null
          ? eventWord(e.name)
          : draw('div', {}, eventWord(e.name), draw('span', { class: 'quiet' }, ` ${e.subject}`)),
        numberText(e.time_s, 1),
        ...(planned ? [numberText(e.planned_s, 1)] : []),
        e.altitude_m === null ? NO_FIGURE : numberText(e.altitude_m * altitude.scale, decimals),
        numberText(e.speed_m_s === null ? null : e.speed_m_s * speed.scale, 0),
      ]),
    ),
  );
}
