import { habitNames, habitWords } from '../../attempts/habitRelations.ts';
import type { Comparison, ComparisonRow, ScoreName } from '../../attempts/types.ts';
import { NO_FIGURE } from '../../units/figures.ts';
import type { ShownUnits } from '../../units/unitSets.ts';
import { verdictWords } from '../comparisonText.ts';
import { habitUnits, scoreHeads } from '../comparisonWords.ts';
import { intervalText, numberText, shown, valueText } from '../figureText.ts';
import { unbroken } from '../sentence.ts';
import { type Drawing, draw } from './drawing.ts';
import { eventWord } from './eventLabels.ts';
import { section, table } from './reportTables.ts';

const number = 'number';
const scores: readonly ScoreName[] = [
  'gravity_m_s',
  'drag_m_s',
  'steering_m_s',
  'backPressure_m_s',
  'propellantLeft_kg',
];

/** The attempts by groups: verdict, margin with its interval, losses, propellant left. */
export function attemptsTable({ rows, groups }: Comparison, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  if (rows.length === 0) return null;
  const columns = [
    { head: 'no.', class: number },
    { head: 'flight', class: '' },
    { head: 'verdict', class: '' },
    { head: 'margin', class: number },
    { head: '95 %', class: 'number quiet more' },
    ...scores.map((s) => ({ head: scoreHeads[s].head, class: 'number more' })),
  ];
  const cells = (r: ComparisonRow) => {
    const form = shown(r.scores.margin_m_s, speed.scale);
    return [
      numberText(r.attempt ?? r.order, 0),
      r.name,
      verdictWords[r.verdict.code],
      valueText(r.scores.margin_m_s, form),
      intervalText(r.scores.margin_m_s, form),
      ...scores.map((s) =>
        valueText(r.scores[s], { scale: scoreHeads[s].unit === 'm/s' ? speed.scale : 1, decimals: 0 }),
      ),
    ];
  };
  const bodies = groups.map((g) =>
    draw(
      'tbody',
      {},
      draw(
        'tr',
        { class: 'group' },
        draw('th', { scope: 'rowgroup', colspan: columns.length, translate: 'no' }, g.name),
      ),
      rows
        .filter((r) => r.group === g.name)
        .map((r) =>
          draw(
            'tr',
            {},
            cells(r).map((cell, c) => {
              const look = columns[c]?.class ?? '';
              const named = look === '' ? {} : { class: look };
              return c === 1
                ? draw('th', { scope: 'row', translate: 'no', ...named }, cell)
                : draw('td', named, cell);
            }),
          ),
        ),
    ),
  );
  const heads = columns.map((c) =>
    draw('th', { scope: 'col', ...(c.class === '' ? {} : { class: c.class }) }, c.head),
  );
  return section(
    'Attempts',
    `${speed.unit}; propellant left in kg`,
    draw('div', { class: 'words' }, draw('table', {}, draw('thead', {}, draw('tr', {}, heads)), bodies)),
  );
}

/** Partings beyond this many, the dearest first, are counted only. */
const mostPartings = 20;

/** Where each attempt's way parts from the reference's, and what it cost. */
export function partingsTable({ rows, reference }: Comparison, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  const told = rows.flatMap((r) => (r.parting === null ? [] : [{ name: r.name, parting: r.parting }]));
  if (reference === null || told.length === 0) return null;
  told.sort((a, b) => (b.parting.cost_m_s.value ?? 0) - (a.parting.cost_m_s.value ?? 0));
  const more = told.length - mostPartings;
  return section(
    'Where the ways part',
    `from ${reference.name} (${reference.why}), beyond the intervals`,
    table(
      [
        { head: 'flight', class: '' },
        { head: 'from, s', class: number },
        { head: 'to, s', class: number },
        { head: 'after', class: '' },
        { head: `cost, ${speed.unit}`, class: number },
        { head: '95 %', class: 'number quiet more' },
      ],
      told.slice(0, mostPartings).map(({ name, parting }) => {
        const form = shown(parting.cost_m_s, speed.scale);
        return [
          name,
          numberText(parting.from_s, 0),
          numberText(parting.to_s, 0),
          parting.after === null ? '' : eventWord(parting.after),
          valueText(parting.cost_m_s, form),
          intervalText(parting.cost_m_s, form),
        ];
      }),
    ),
    more > 0
      ? draw('p', { class: 'under' }, `And ${numberText(more, 0)} more, each cheaper than these.`)
      : null,
  );
}

/** What the pilots do, with how much it varies. */
export function habitsTable({ groups, by }: Comparison, units: ShownUnits): Drawing | null {
  const told = groups.filter((g) => habitNames.some((h) => g.habits[h].count > 0));
  if (told.length === 0) return null;
  return section(
    'Habits',
    'median, and half the distance between the quartiles',
    table(
      [
        { head: by, class: '' },
        ...habitNames.map((h) => {
          const { unit } = units.shownIn(habitUnits[h][0], 1);
          return { head: unit === '' ? habitWords[h] : `${habitWords[h]}, ${unit}`, class: 'number habit' };
        }),
      ],
      told.map((g) => [
        g.name,
        ...habitNames.map((h) => {
          const { median, lower, upper, count } = g.habits[h];
          const [given, decimals] = habitUnits[h];
          const { scale } = units.shownIn(given, 1);
          if (median === null || lower === null || upper === null) return NO_FIGURE;
          const value = numberText(median * scale, decimals);
          return count < 2 ? value : `${value} ±${numberText(((upper - lower) / 2) * scale, decimals)}`;
        }),
      ]),
    ),
  );
}

/** The attempt that was cheapest in each phase. */
export function bestPhasesTable({ bestPhases }: Comparison, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  if (bestPhases.length === 0) return null;
  return section(
    'Best in each phase',
    `rise of the projected total, ${speed.unit}`,
    table(
      [
        { head: 'phase', class: '' },
        { head: 'cheapest', class: '' },
        { head: speed.unit, class: number },
        { head: 'less than the others’ median', class: number },
      ],
      bestPhases.map((b) => [
        b.label,
        b.name,
        numberText(b.cost_m_s * speed.scale, 0),
        b.saved_m_s === null ? NO_FIGURE : numberText(b.saved_m_s * speed.scale, 0),
      ]),
    ),
  );
}

/** The best phases of each group put together and flown. */
export function stitchedSection({ stitched }: Comparison, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  const length = units.shownIn('km', 1e-3);
  if (stitched.length === 0) return null;
  return section(
    'Best phases flown one after another',
    `the “stitched best”; costs in ${speed.unit}`,
    stitched.map((s) => {
      const text = draw('p', { class: 'detail' }, unbroken(s.text));
      if (s.kind !== 'flown') return text;
      return draw(
        'div',
        { class: 'keep stitched' },
        text,
        table(
          [
            { head: 'phase', class: '' },
            { head: 'flown as by', class: '' },
            { head: 'there', class: number },
            { head: 'here', class: number },
            { head: `gap: altitude, ${length.unit}`, class: 'number more' },
            { head: `speed, ${speed.unit}`, class: 'number more' },
            { head: 'path angle, °', class: 'number more' },
            { head: 'joins', class: '' },
          ],
          s.phases.map((p) => [
            p.label,
            p.name,
            numberText(p.own_m_s * speed.scale, 0),
            numberText(p.stitched_m_s * speed.scale, 0),
            p.gap === null ? '' : numberText(p.gap.altitude_m * length.scale, length.unit === 'km' ? 1 : 0),
            p.gap === null ? '' : numberText(p.gap.speed_m_s * speed.scale, 0),
            p.gap === null ? '' : numberText(p.gap.flightPathAngle_deg, 1),
            p.gap === null ? '' : p.joins ? 'yes' : 'no',
          ]),
        ),
      );
    }),
  );
}
