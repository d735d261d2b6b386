import type { Comparison } from '../../attempts/types.ts';
import { CAUTIONS } from '../../review/cautions.ts';
import { type ShownUnits, type UnitSetName, unitsOf } from '../../units/unitSets.ts';
import { attemptCurves, curvesNote, waysUp } from '../comparisonCurves.ts';
import { comparisonHeading, groupRemark, heldText } from '../comparisonWords.ts';
import { plainDocument } from '../plainDocument.ts';
import { sentence, unbroken } from '../sentence.ts';
import { comparisonNotes } from './comparisonNotes.ts';
import {
  attemptsTable,
  bestPhasesTable,
  habitsTable,
  partingsTable,
  stitchedSection,
} from './comparisonTables.ts';
import { type Curve, type CurveAxis, curveChart } from './curveChart.ts';
import { type Drawing, draw } from './drawing.ts';
import { htmlFile } from './htmlFile.ts';
import { drawnTwice } from './reportCharts.ts';
import { section } from './reportTables.ts';
import { spoken } from './spoken.ts';

/**
 * A comparison as one self-contained HTML file in the form of a flight's report: table, charts, what they show, how
 * it was found and what limits it. It needs no network and holds no script.
 * @param set units that lengths and speeds are written in
 */
export function comparisonReport(document: Comparison, set: UnitSetName = 'km'): string {
  const comparison = plainDocument(document);
  const units = unitsOf(set);
  return htmlFile(
    `Comparison report: ${comparisonHeading(comparison)}`,
    sheet(comparison, units).map((part) => spoken(part, units)),
  );
}

function sheet(comparison: Comparison, units: ShownUnits): Drawing[] {
  const { groups, reference, by } = comparison;
  const against =
    reference === null ? 'none has a margin' : `held against ${reference.name} (${reference.why})`;
  return [
    draw(
      'header',
      { class: 'top' },
      draw('b', {}, 'lossbook'),
      draw('span', { class: 'quiet' }, 'comparison report'),
    ),
    draw(
      'main',
      {},
      [
        draw('p', { class: 'about' }, `grouped by ${by} · ${against}`),
        draw('h1', {}, unbroken(comparisonHeading(comparison))),
        ...groups
          .slice(0, 12)
          .map((g) =>
            draw(
              'p',
              { class: 'detail' },
              unbroken(sentence(`${g.name}: ${groupRemark(g, units.shownIn('m/s', 1))}`)),
            ),
          ),
        attemptsTable(comparison, units),
        marginsSection(comparison, units),
        waysSection(comparison, units),
        partingsTable(comparison, units),
        habitsTable(comparison, units),
        told(
          'Progress',
          'margin over the attempts in their order',
          groups.map((g) => `${g.name}: ${g.progress.text}`),
        ),
        told(
          'Whether they differ',
          'on the margin',
          comparison.differences.map((d) => d.text),
        ),
        told(
          'What goes with the margin',
          '',
          comparison.habits.map((h) => h.text),
        ),
        bestPhasesTable(comparison, units),
        stitchedSection(comparison, units),
        told('What limits this comparison', '', [...comparison.cautions, heldText(comparison)]),
        section(
          'Method',
          '',
          draw(
            'dl',
            { class: 'notes' },
            comparisonNotes.flatMap(({ term, note }) => [draw('dt', {}, term), draw('dd', {}, note)]),
          ),
        ),
      ].filter((part) => part !== null),
    ),
    draw(
      'footer',
      { class: 'foot' },
      CAUTIONS.map((text) => draw('p', {}, text)),
    ),
  ];
}

function told(title: string, aside: string, lines: readonly string[]): Drawing | null {
  return section(
    title,
    aside,
    lines.length === 0
      ? null
      : draw(
          'ul',
          { class: 'notes' },
          lines.map((line) => draw('li', {}, unbroken(line))),
        ),
  );
}

/** The reference, where it is one of the attempts, is drawn in front. */
function marginsSection(comparison: Comparison, units: ShownUnits): Drawing | null {
  const speed = units.shownIn('m/s', 1);
  const { curves, reference } = comparison;
  const drawn = attemptCurves(comparison, reference?.name ?? null, '', (row) => curves.margin_m_s[row] ?? []);
  return chartSection(
    'Margins on delta-v spent',
    [speed.unit, curvesNote(comparison)],
    curves.spent_m_s,
    { label: 'delta-v spent', ...speed },
    { label: 'margin', ...speed },
    drawn,
  );
}

function waysSection(comparison: Comparison, units: ShownUnits): Drawing | null {
  const length = units.shownIn('km', 1e-3, 'chart');
  const { downrange_m, altitude_m } = waysUp(comparison);
  if (downrange_m.at(-1) === 0) return null;
  const drawn = attemptCurves(
    comparison,
    comparison.reference?.name ?? null,
    '',
    (row) => altitude_m[row] ?? [],
  );
  return chartSection(
    'Ways up',
    [`altitude in ${length.unit} against downrange`, curvesNote(comparison)],
    downrange_m,
    { label: 'downrange', ...length },
    { label: 'altitude', ...length },
    drawn,
  );
}

function chartSection(
  title: string,
  aside: readonly string[],
  at: readonly number[],
  x: CurveAxis,
  y: CurveAxis,
  curves: readonly (Curve & { readonly keyed: string })[],
): Drawing | null {
  const keyed = new Map(curves.toReversed().map((c) => [c.keyed, c]));
  const key = [...keyed].toReversed().map(([name, { colour, dash }]) =>
    draw(
      'li',
      {},
      draw(
        'svg',
        { class: 'key', width: 26, height: 8, 'aria-hidden': 'true' },
        draw('line', {
          x1: 0,
          x2: 26,
          y1: 4,
          y2: 4,
          stroke: `var(${colour})`,
          'stroke-width': 2,
          'stroke-dasharray': dash,
        }),
      ),
      name,
    ),
  );
  const names = [...keyed.keys()].slice(0, 12).join(', ');
  const chart = drawnTwice((frame) =>
    curveChart({ at, x, y, curves, frame, height: 300, sentence: `${title}: ${names}` }),
  );
  if (chart === null) return null;
  return section(
    title,
    aside.filter((part) => part !== '').join('; '),
    chart,
    draw('ul', { class: 'labels' }, key),
  );
}
