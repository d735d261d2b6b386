import type { BudgetFigures, Review } from '../review/types.ts';
import { intervalText, numberText, shown, valueText } from './figureText.ts';
import { headingText } from './headingText.ts';
import type { Inks } from './inks.ts';
import { marginLine } from './marginLine.ts';
import { movedText } from './movedText.ts';
import { textTable } from './textTable.ts';
import { wrapText } from './wrapText.ts';

/** The budget's figures in the order they are shown, with the names that people read. */
export const budgetOrder: readonly (readonly [keyof BudgetFigures, string])[] = [
  ['deltaVSpent', 'spent'],
  ['deltaVToGo', 'to go'],
  ['deltaVRemaining', 'remaining aboard'],
  ['vehicleDeltaV', 'vehicle, all stages'],
  ['projectedTotal', 'projected total'],
  ['margin', 'margin'],
  ['shortfall', 'shortfall'],
];

/** The budget's figures at cutoff, one a line, with what assumptions could move under them. */
export function budgetText(budget: Review['budget'], ink: Inks, width: number): string[] {
  const rows = budgetOrder.map(([key, name]) => {
    const figure = budget[key];
    return [name, valueText(figure, shown(figure)), intervalText(figure, shown(figure)), figure.basis];
  });
  const table = textTable(
    [
      { align: 'left' },
      { align: 'point', ink: ink.strong },
      { align: 'left', ink: ink.faint },
      { align: 'left', ink: ink.faint },
    ],
    [['', 'm/s', '95 %', 'basis'], ...rows],
    ink.faint,
  );
  const named = budgetOrder.map(([key, name]) => [name, budget[key], shown(budget[key])] as const);
  return [...table, ...movedText(named, 'm/s', width)];
}

/**
 * Heading, curve and time axis of the margin, or of the delta-v to go where no margin is to be had.
 * @param end_s end of the ascent, at which the heading tells the curve's value
 */
export function marginText(budget: Review['budget'], end_s: number, ink: Inks, width: number): string[] {
  const { time_s, margin, toGo } = budget.curves;
  const hasMargin = margin.some((v) => v !== null);
  if (!hasMargin && !toGo.some((v) => v !== null)) return [];
  const curve = hasMargin ? margin : toGo;
  const { bar, axis } = marginLine(time_s, curve, budget.lostAt_s, width);
  const legend = [
    hasMargin ? 'm/s to spare' : 'least m/s to the target',
    /[░▒▓]/u.test(bar) ? '░▒▓ below zero' : '',
    bar.includes('·') ? '· not available' : '',
    budget.lostAt_s === null ? '' : '▲ target out of reach from here on',
  ].filter((part) => part !== '');
  return [
    headingText(hasMargin ? 'Margin' : 'Delta-v to go', ends(time_s, curve, end_s), ink, width),
    bar.replace(/[░▒▓]+/gu, ink.alarm),
    axis.replace('▲', ink.alarm),
    ...wrapText(legend.join('; '), width).map(ink.faint),
  ];
}

/** The first known value and the last until `end_s`, with their times. */
function ends(time_s: readonly number[], values: readonly (number | null)[], end_s: number): string {
  const known = values.flatMap((value, i) => (value === null ? [] : [{ value, time: time_s[i] ?? 0 }]));
  const [first] = known;
  const last = known.findLast(({ time }) => time <= end_s + 0.05);
  return [first, last === first ? undefined : last]
    .filter((k) => k !== undefined)
    .map(({ value, time }) => `${numberText(value, 0)} m/s at ${numberText(time, 0)} s`)
    .join(', ');
}
