import type { Comparison, HabitName, ScoreName } from '../attempts/types.ts';
import { csvCell } from './csvCell.ts';

/**
 * The table of attempts as RFC 4180 CSV: one row an attempt, each score with the ends of its 95 % interval, habits,
 * and where it parts from the reference. Missing values are empty.
 */
export function comparisonCsv({ rows }: Comparison): string {
  const [first] = rows;
  const scores = Object.keys(first?.scores ?? {}) as ScoreName[];
  const habits = Object.keys(first?.habits ?? {}) as HabitName[];
  const head = [
    'name',
    'group',
    'attempt',
    'order',
    'date',
    'verdict',
    ...scores.flatMap((s) => [s, `${s}_low`, `${s}_high`, `${s}_basis`]),
    ...habits,
    'partsFrom_s',
    'partsTo_s',
    'partingCost_m_s',
  ];
  const number = (value: number | null | undefined) =>
    value === null || value === undefined || !Number.isFinite(value) ? '' : String(value);
  const lines = rows.map((r) => [
    csvCell(r.name),
    csvCell(r.group),
    number(r.attempt),
    number(r.order),
    csvCell(r.date ?? ''),
    r.verdict.code,
    ...scores.flatMap((s) => {
      const { value, low, high, basis } = r.scores[s];
      return [number(value), number(low), number(high), basis];
    }),
    ...habits.map((h) => number(r.habits[h])),
    number(r.parting?.from_s),
    number(r.parting?.to_s),
    number(r.parting?.cost_m_s.value),
  ]);
  return `${[head, ...lines].map((cells) => cells.join(',')).join('\r\n')}\r\n`;
}
