import { quantile } from '../log/statistics.ts';

/** Middle and spread of some values. */
export interface Spread {
  readonly count: number;
  /** Null of nothing. */
  readonly median: number | null;
  /** Lower and upper quartile (of an even count the linear place between neighbours, Hyndman & Fan type 7). */
  readonly lower: number | null;
  readonly upper: number | null;
  readonly least: number | null;
  readonly most: number | null;
}

/** Median, quartiles and ends of the values that are there. */
export function spread(values: readonly (number | null)[]): Spread {
  const sorted = values.filter((v): v is number => v !== null).sort((a, b) => a - b);
  if (sorted.length === 0)
    return { count: 0, median: null, lower: null, upper: null, least: null, most: null };
  return {
    count: sorted.length,
    median: quantile(sorted, 0.5),
    lower: quantile(sorted, 0.25),
    upper: quantile(sorted, 0.75),
    least: sorted[0]!,
    most: sorted[sorted.length - 1]!,
  };
}
