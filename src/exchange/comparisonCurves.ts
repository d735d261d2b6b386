import type { Comparison } from '../attempts/types.ts';
import { quantile } from '../log/statistics.ts';
import type { Curve } from './report/curveChart.ts';
import { valueAt } from './sampleAt.ts';

/** A curve of one attempt, or of a group of many. */
export interface AttemptCurve extends Curve {
  /** Word of the key: curves of one group share it. */
  readonly keyed: string;
  /** Name of its column in a saved table. */
  readonly column: string;
}

/** Looks of the groups: colour and dash together, so that neither has to be told alone. */
const looks = [
  { colour: '--reached', dash: null },
  { colour: '--short', dash: '7 4' },
  { colour: '--cause-drag', dash: '2 3' },
  { colour: '--cause-steering', dash: '9 3 2 3' },
  { colour: '--cause-pressure', dash: '4 2' },
  { colour: '--cause-frame', dash: '12 4' },
] as const;

/** More attempts than this are drawn as the median and the middle nine tenths of each group. */
const MOST_CURVES = 60;
const pathPoints = 120;

/** True where curves stand for groups, not for single attempts. */
export function drawnByGroup({ rows }: Comparison): boolean {
  return rows.length > MOST_CURVES;
}

/** What the curves stand for, where that has to be said. */
export function curvesNote(comparison: Comparison): string {
  return drawnByGroup(comparison) ? 'line: median at each place, shade: the middle nine tenths' : '';
}

/**
 * The curves of a comparison's chart: one for each attempt, in its group's look; of many attempts one for each
 * group.
 * @param apart name of an attempt that is drawn by itself, in front
 * @param values of a row's curve, on the chart's axis
 */
export function attemptCurves(
  comparison: Comparison,
  apart: string | null,
  column: string,
  values: (row: number) => readonly (number | null)[],
): AttemptCurve[] {
  const { rows } = comparison;
  const set = rows.findIndex((r) => r.name === apart);
  const rest = drawnByGroup(comparison)
    ? groupCurves(comparison, column, values)
    : singleCurves(comparison, column, values).filter((_, i) => i !== set);
  const row = rows[set];
  if (row === undefined) return rest;
  return [
    ...rest,
    {
      name: row.name,
      keyed: row.name,
      column: `${column} ${row.name}`,
      values: values(set),
      colour: '--ink',
      dash: null,
      bold: true,
    },
  ];
}

/** One curve for each attempt; all of them, however many, for a table. */
export function singleCurves(
  { rows, groups }: Comparison,
  column: string,
  values: (row: number) => readonly (number | null)[],
): AttemptCurve[] {
  const place = new Map(groups.map((g, i) => [g.name, i]));
  return rows.map(
    (row, i): AttemptCurve => ({
      name: row.name,
      keyed: row.group,
      column: `${column} ${row.name}`,
      values: values(i),
      ...(looks[(place.get(row.group) ?? 0) % looks.length] ?? looks[0]),
    }),
  );
}

/** Median and middle nine tenths of each group; of more groups than there are looks, of all attempts. */
function groupCurves(
  { rows, groups }: Comparison,
  column: string,
  values: (row: number) => readonly (number | null)[],
): AttemptCurve[] {
  const told = groups.length <= looks.length;
  const members = new Map<string, (readonly (number | null)[])[]>();
  rows.forEach((row, i) => {
    const name = told ? row.group : 'all';
    const list = members.get(name);
    if (list === undefined) members.set(name, [values(i)]);
    else list.push(values(i));
  });
  return [...members].map(([name, curves], i): AttemptCurve => {
    const points = curves.reduce((most, c) => Math.max(most, c.length), 0);
    const [low, median, high] = [0.05, 0.5, 0.95].map(() => new Array<number | null>(points).fill(null)) as [
      (number | null)[],
      (number | null)[],
      (number | null)[],
    ];
    for (let k = 0; k < points; k++) {
      const known = curves.map((c) => c[k] ?? null).filter((v): v is number => v !== null);
      // Where most have ended, what is left is no middle.
      if (known.length * 2 < curves.length) continue;
      known.sort((a, b) => a - b);
      low[k] = quantile(known, 0.05);
      median[k] = quantile(known, 0.5);
      high[k] = quantile(known, 0.95);
    }
    const keyed = `${name} (${curves.length})`;
    return {
      name: keyed,
      keyed,
      column: `${column} median ${name}`,
      values: median,
      band: { low, high },
      ...(looks[i] ?? looks[0]),
    };
  });
}

/** The ways up on one axis of distance. */
export function waysUp({ paths }: Comparison): {
  readonly downrange_m: readonly number[];
  readonly altitude_m: readonly (readonly (number | null)[])[];
} {
  const far = paths.reduce((most, p) => Math.max(most, p.downrange_m.at(-1) ?? 0), 0);
  const downrange_m = Array.from({ length: pathPoints + 1 }, (_, k) => (far * k) / pathPoints);
  const altitude_m = paths.map((p) => downrange_m.map((d) => valueAt(p.downrange_m, p.altitude_m, d)));
  return { downrange_m, altitude_m };
}
