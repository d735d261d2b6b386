import type { BudgetFigures, Review } from '../review/types.ts';
import { assumptionTexts, intervalText, numberText, shown, valueText } from './figureText.ts';
import { headingText } from './headingText.ts';
import type { Inks } from './inks.ts';
import { marginLine } from './marginLine.ts';
import { textTable } from './textTable.ts';
import { wrapText } from './wrapText.ts';

const budgetOrder: readonly (readonly [keyof BudgetFigures, string])[] = [
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
  const named = budgetOrder.flatMap(([key, name]) =>
    assumptionTexts(budget[key], shown(budget[key])).map((text) => `${name}, ${text}`),
  );
  if (named.length === 0) return table;
  return [...table, ...wrapText(`Assumptions could move, in m/s: ${named.join('; ')}.`, width, '  ')];
}

/** Heading, curve and time axis of the margin, or of the delta-v to go where no margin is to be had. */
export function marginText(budget: Review['budget'], ink: Inks, width: number): string[] {
  const { time_s, margin, toGo } = budget.curves;
  if (margin.some((v) => v !== null)) {
    const meaning = 'm/s to spare';
    return drawn('Margin', ends(time_s, margin), meaning, budget, margin, ink, width);
  }
  if (!toGo.some((v) => v !== null)) return [];
  return drawn('Delta-v to go', ends(time_s, toGo), 'least m/s to the target', budget, toGo, ink, width);
}

function drawn(
  name: string,
  remark: string,
  meaning: string,
  budget: Review['budget'],
  curve: readonly (number | null)[],
  ink: Inks,
  width: number,
): string[] {
  const { bar, axis } = marginLine(budget.curves.time_s, curve, budget.lostAt_s, width);
  const legend = [
    meaning,
    /[░▒▓]/u.test(bar) ? '░▒▓ below zero' : '',
    bar.includes('·') ? '· not available' : '',
    budget.lostAt_s === null ? '' : '▲ target out of reach from here on',
  ].filter((part) => part !== '');
  return [
    headingText(name, remark, ink, width),
    bar.replace(/[░▒▓]+/gu, ink.alarm),
    axis.replace('▲', ink.alarm),
    ...wrapText(legend.join('; '), width).map(ink.faint),
  ];
}

/** First and last known value with their times. */
function ends(time_s: readonly number[], values: readonly (number | null)[]): string {
  const known = values.flatMap((value, i) => (value === null ? [] : [{ value, time: time_s[i] ?? 0 }]));
  const at = (k: { value: number; time: number } | undefined) =>
    k === undefined ? '' : `${numberText(k.value, 0)} m/s at ${numberText(k.time, 0)} s`;
  return `${at(known[0])}, ${at(known[known.length - 1])}`;
}
