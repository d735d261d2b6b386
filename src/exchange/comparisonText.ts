import { habitNames, habitWords } from '../attempts/habitRelations.ts';
import type { Comparison, ComparisonGroup, ComparisonRow, HabitName } from '../attempts/types.ts';
import type { VerdictCode } from '../review/types.ts';
import { NO_FIGURE } from '../units/figures.ts';
import { heldText, stitchedNote } from './comparisonWords.ts';
import { numberText, shown, valueText } from './figureText.ts';
import { headingText } from './headingText.ts';
import { type Inks, inks } from './inks.ts';
import { plainDocument } from './plainDocument.ts';
import type { TextOptions } from './reviewText.ts';
import { textTable } from './textTable.ts';
import { cutText, wrapText } from './wrapText.ts';

/** Verdicts short enough for a column. */
export const verdictWords: Readonly<Record<VerdictCode, string>> = {
  'in-orbit': 'in orbit',
  'orbit-off-target': 'off target',
  'orbit-decaying': 'decaying',
  'suborbital-out-of-propellant': 'tanks dry',
  'suborbital-early-cutoff': 'cut early',
  'suborbital-stage-not-lit': 'not lit',
  'suborbital-lost-in-flight': 'lost',
  'suborbital-as-planned': 'as planned',
  escape: 'escape',
  'started-in-orbit': 'in orbit before',
  undetermined: 'not told',
};

/** Heads of the habits' columns. */
const habitHeads: Readonly<Record<HabitName, readonly [string, number]>> = {
  pitchOverTime_s: ['over s', 1],
  pitchOverAngle_deg: ['tilt °', 1],
  thrustToWeightAtMaxQ: ['T/W max q', 2],
  angleOfAttackInAir_deg: ['attack °', 2],
  cutoffError_m_s: ['cutoff m/s', 1],
};

/** A comparison as text for a terminal: the table by groups, then what it shows, then what limits it. */
export function comparisonText(document: Comparison, { width, colour }: TextOptions): string {
  const comparison = plainDocument(document);
  const ink = inks(colour);
  const section = (name: string, remark: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', headingText(name, remark, ink, width), ...lines];
  const points = (texts: readonly string[]) => texts.flatMap((text) => wrapText(`· ${text}`, width, '  '));
  const { rows, groups } = comparison;
  const lines = [
    ...wrapText(opening(comparison), width).map(ink.strong),
    ...groups.flatMap((g) =>
      section(
        cutText(g.name, 30),
        remarkOf(g),
        tableOf(
          rows.filter((r) => r.group === g.name),
          ink,
        ),
      ),
    ),
    ...section('Habits', 'median, and half the middle half’s width', habitTable(groups, ink)),
    ...section(
      'Progress',
      'margin over the attempts in their order',
      points(groups.map((g) => `${g.name}: ${g.progress.text}`)),
    ),
    ...section('What goes with the margin', '', points(comparison.habits.map((h) => h.text))),
    ...section('Whether they differ', '', points(comparison.differences.map((d) => d.text))),
    ...section('Best in each phase', 'rise of the projected total', phaseTable(comparison, ink)),
    ...section(
      'Best phases flown one after another',
      'the “stitched best”',
      stitchedLines(comparison, ink, width),
    ),
    ...section(
      'Where the ways part',
      comparison.reference === null ? '' : `from ${cutText(comparison.reference.name, 30)}`,
      partings(rows, width),
    ),
    '',
    ...[...comparison.cautions, heldText(comparison)].flatMap((text) => wrapText(text, width)).map(ink.faint),
  ];
  return `${lines.join('\n')}\n`;
}

function opening({ rows, by, reference }: Comparison): string {
  const count = `${numberText(rows.length, 0)} ${rows.length === 1 ? 'attempt' : 'attempts'} by ${by}`;
  return reference === null
    ? `${count}; none has a margin to be held against.`
    : `${count}, held against ${reference.name} (${reference.why}).`;
}

function remarkOf({ attempts, reached, margin }: ComparisonGroup): string {
  const range =
    margin.median === null
      ? 'no margin known'
      : `margin ${numberText(margin.least, 0)} to ${numberText(margin.most, 0)} m/s`;
  return `${reached} of ${attempts} on target, ${range}`;
}

function tableOf(rows: readonly ComparisonRow[], ink: Inks): string[] {
  const cells = rows.map((r) => [
    String(r.attempt ?? r.order),
    cutText(r.name, 22),
    verdictWords[r.verdict.code],
    valueText(r.scores.margin_m_s, shown(r.scores.margin_m_s)),
    ...(['gravity_m_s', 'drag_m_s', 'steering_m_s', 'propellantLeft_kg'] as const).map((name) =>
      valueText(r.scores[name], { scale: 1, decimals: 0 }),
    ),
  ]);
  return textTable(
    [
      { align: 'right', ink: ink.faint },
      { align: 'left' },
      { align: 'left' },
      { align: 'point', ink: ink.strong },
      { align: 'right' },
      { align: 'right' },
      { align: 'right' },
      { align: 'right' },
    ],
    [['', '', 'verdict', 'margin', 'gravity', 'drag', 'steer', 'left kg'], ...cells],
    ink.faint,
  );
}

function habitTable(groups: readonly ComparisonGroup[], ink: Inks): string[] {
  const told = groups.filter((g) => habitNames.some((h) => g.habits[h].count > 0));
  if (told.length === 0) return [];
  const rows = told.map((g) => [
    cutText(g.name, 16),
    ...habitNames.map((h) => {
      const { median, lower, upper, count } = g.habits[h];
      const decimals = habitHeads[h][1];
      if (median === null || lower === null || upper === null) return NO_FIGURE;
      const value = numberText(median, decimals);
      return count < 2 ? value : `${value} ±${numberText((upper - lower) / 2, decimals)}`;
    }),
  ]);
  return [
    ...textTable(
      [{ align: 'left' }, ...habitNames.map(() => ({ align: 'right' as const }))],
      [['', ...habitNames.map((h) => habitHeads[h][0])], ...rows],
      ink.faint,
    ),
    ink.faint(`over, tilt: ${habitWords.pitchOverTime_s}, angle; attack: angle of attack in dense air`),
  ];
}

function phaseTable({ bestPhases }: Comparison, ink: Inks): string[] {
  if (bestPhases.length === 0) return [];
  const rows = bestPhases.map((b) => [
    cutText(b.label, 24),
    cutText(b.name, 26),
    numberText(b.cost_m_s, 0),
    b.saved_m_s === null ? NO_FIGURE : numberText(b.saved_m_s, 0),
  ]);
  return textTable(
    [{ align: 'left' }, { align: 'left' }, { align: 'right', ink: ink.strong }, { align: 'right' }],
    [['phase', 'cheapest', 'm/s', 'under the others’ median'], ...rows],
    ink.faint,
  );
}

function stitchedLines({ stitched }: Comparison, ink: Inks, width: number): string[] {
  if (stitched.length === 0) return [];
  const rows = stitched.flatMap((s) => {
    if (s.kind !== 'flown') return [];
    return s.phases.map((p, k) => [
      k === 0 ? cutText(s.group, 12) : '',
      cutText(p.label, 18),
      cutText(p.name, 20),
      numberText(p.own_m_s, 0),
      numberText(p.stitched_m_s, 0),
      ...(p.gap === null
        ? ['', '']
        : [numberText(p.gap.altitude_m / 1000, 1), numberText(p.gap.speed_m_s, 0)]),
    ]);
  });
  const right = { align: 'right' as const };
  return [
    ...stitched.flatMap((s) => wrapText(`· ${s.text}`, width, '  ')),
    ...(rows.length === 0
      ? []
      : textTable(
          [
            { align: 'left' },
            { align: 'left' },
            { align: 'left' },
            right,
            { ...right, ink: ink.strong },
            right,
            right,
          ],
          [['', 'phase', 'of', 'own', 'here', 'gap km', 'm/s'], ...rows],
          ink.faint,
        )),
    ...wrapText(stitchedNote, width).map(ink.faint),
  ];
}

/** One line a row, the dearest first; of many only so many. */
const MOST_PARTINGS = 12;

function partings(rows: readonly ComparisonRow[], width: number): string[] {
  const told = rows.flatMap((r) => (r.parting === null ? [] : [{ name: r.name, parting: r.parting }]));
  told.sort((a, b) => (b.parting.cost_m_s.value ?? 0) - (a.parting.cost_m_s.value ?? 0));
  const lines = told
    .slice(0, MOST_PARTINGS)
    .flatMap(({ name, parting }) => wrapText(`· ${name}: ${parting.text}`, width, '  '));
  const more = told.length - MOST_PARTINGS;
  return more > 0 ? [...lines, `  and ${numberText(more, 0)} more`] : lines;
}
