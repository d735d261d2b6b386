import { medianSorted, probit } from 'simple-statistics';
import { kendallTail } from './kendallTail.ts';

/** A line through points by the median of the slopes of all pairs. */
export interface TheilSen {
  /** y per x. */
  readonly slope: number;
  /** Median of y − slope·x. */
  readonly intercept: number;
  /** Ends of the slope's interval; null where so few points cannot carry the confidence asked for. */
  readonly low: number | null;
  readonly high: number | null;
  /** Confidence that the interval has: at least that asked for, more where the steps of so few points leave no choice. */
  readonly confidence: number;
  readonly points: number;
}

/** Up to here the score's distribution is counted out; beyond, and with ties, it is taken as normal. */
const COUNTED = 60;

/** The pairs grow with the square of the points: of more than this, as many are taken at even places. */
const MOST_POINTS = 2000;

/**
 * Theil–Sen line: slope = median of (yj − yi)/(xj − xi) over pairs with unlike x. The interval runs between two of
 * the ordered slopes, by the normal distribution of Kendall's score with its variance corrected for ties; without
 * ties and up to 60 points its confidence is counted out. Null for fewer than two different x.
 * Sources: Sen 1968, J. Am. Stat. Assoc. 63, 1379, §3 and §6; Theil 1950.
 *
 * @param x,y equally long, finite
 * @param confidence of the interval, 0 to 1
 */
export function theilSen(x: readonly number[], y: readonly number[], confidence = 0.95): TheilSen | null {
  if (x.length > MOST_POINTS) {
    const places = Array.from({ length: MOST_POINTS }, (_, k) =>
      Math.round((k * (x.length - 1)) / (MOST_POINTS - 1)),
    );
    const some = (values: readonly number[]) => places.map((i) => values[i]!);
    return theilSen(some(x), some(y), confidence);
  }
  const n = x.length;
  const slopes: number[] = [];
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) if (x[i] !== x[j]) slopes.push((y[j]! - y[i]!) / (x[j]! - x[i]!));
  if (slopes.length === 0) return null;
  slopes.sort((a, b) => a - b);
  const slope = medianSorted(slopes);
  const intercept = medianSorted(x.map((at, i) => y[i]! - slope * at).sort((a, b) => a - b));
  const reach = scoreReach(x, y, slopes.length, confidence);
  if (reach === null) return { slope, intercept, low: null, high: null, confidence: 0, points: n };
  const outside = reach.outside;
  return {
    slope,
    intercept,
    low: slopes[outside]!,
    high: slopes[slopes.length - 1 - outside]!,
    confidence: reach.confidence,
    points: n,
  };
}

/**
 * How many slopes lie outside the interval at each end, and the confidence that this gives: Sen's large-sample
 * places (N ∓ z·σ)/2 to the nearest whole one, moved outward while counting says that they promise too much.
 */
function scoreReach(
  x: readonly number[],
  y: readonly number[],
  pairs: number,
  confidence: number,
): { readonly outside: number; readonly confidence: number } | null {
  const n = x.length;
  const [xTies, yTies] = [tieSizes(x), tieSizes(y)];
  const sigma = Math.sqrt(scoreVariance(n, xTies, yTies));
  let outside = Math.round((pairs - probit(0.5 + confidence / 2) * sigma) / 2) - 1;
  if (outside < 0) return null;
  if (xTies.length + yTies.length > 0 || n > COUNTED) return { outside, confidence };
  // The interval holds every slope that a score within ±(N − 2·outside − 2) does not contradict.
  const sure = () => 1 - 2 * kendallTail(n, pairs - 2 * outside);
  while (outside > 0 && sure() < confidence) outside--;
  return sure() < confidence ? null : { outside, confidence: sure() };
}

function tieSizes(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const v of values) counts.set(v, (counts.get(v) ?? 0) + 1);
  return [...counts.values()].filter((c) => c > 1);
}

/** Variance of Kendall's score with ties in both (Kendall 1970, Rank Correlation Methods, eq. 4.3). */
function scoreVariance(n: number, xTies: readonly number[], yTies: readonly number[]): number {
  const sum = (ties: readonly number[], f: (t: number) => number) => ties.reduce((s, t) => s + f(t), 0);
  const whole = (t: number) => t * (t - 1) * (2 * t + 5);
  const two = (t: number) => t * (t - 1);
  const three = (t: number) => t * (t - 1) * (t - 2);
  return (
    (whole(n) - sum(xTies, whole) - sum(yTies, whole)) / 18 +
    (n > 2 ? (sum(xTies, three) * sum(yTies, three)) / (9 * three(n)) : 0) +
    (n > 1 ? (sum(xTies, two) * sum(yTies, two)) / (2 * two(n)) : 0)
  );
}
