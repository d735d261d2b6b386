import { mean } from 'simple-statistics';
import { seededRandom } from './seededRandom.ts';

/** How often shuffled data differ at least as much as the data do. */
export interface PermutationTest {
  /** Mean of the first sample less that of the second, or the mean of the differences. */
  readonly difference: number;
  /** Arrangements with a difference at least as great, one way and either way. */
  readonly asFarOneWay: number;
  readonly asFar: number;
  readonly arrangements: number;
  /** True where every arrangement was counted, false where they were drawn by lot. */
  readonly exact: boolean;
  /** Shares: one way (in the direction seen) and either way. Drawn by lot, the data themselves count as one draw. */
  readonly pOneWay: number;
  readonly p: number;
  /** The least p that samples of these sizes can give either way. */
  readonly leastP: number;
}

/** Up to so many arrangements are counted out; else so many are drawn, of large samples fewer. */
const COUNTED = 200_000;
const drawsFor = (values: number): number => Math.max(4000, Math.min(20_000, Math.round(1.5e6 / values)));

/**
 * Two-sample permutation test of the difference of means: all ways to deal the pooled values into samples of the
 * same sizes. Null for an empty sample. (Efron & Tibshirani 1993, ch. 15.)
 */
export function twoSampleTest(a: readonly number[], b: readonly number[], seed = 1): PermutationTest | null {
  if (a.length === 0 || b.length === 0) return null;
  const pool = [...a, ...b];
  const total = pool.reduce((s, x) => s + x, 0);
  const seen = mean([...a]) - mean([...b]);
  // The difference of means follows from the first sample's sum alone.
  const difference = (sum: number) => sum / a.length - (total - sum) / b.length;
  const count = new Tally(seen, spreadOf(pool));
  const ways = binomial(pool.length, a.length);
  if (ways <= COUNTED) {
    deal(pool, a.length, (sum) => count.add(difference(sum)));
    return count.result(true, 2 / ways);
  }
  const random = seededRandom(seed);
  const order = pool.slice();
  const draws = drawsFor(pool.length);
  for (let draw = 0; draw < draws; draw++) {
    let sum = 0;
    for (let i = 0; i < a.length; i++) {
      const j = i + Math.floor(random() * (order.length - i));
      const other = order[j]!;
      order[j] = order[i]!;
      order[i] = other;
      sum += other;
    }
    count.add(difference(sum));
  }
  return count.result(false, 2 / ways);
}

/** Paired permutation test: every choice of signs of the differences (Fisher 1935, §21). Null without any. */
export function pairedTest(differences: readonly number[], seed = 1): PermutationTest | null {
  const n = differences.length;
  if (n === 0) return null;
  const seen = mean([...differences]);
  const count = new Tally(seen, spreadOf(differences));
  const ways = 2 ** n;
  if (ways <= COUNTED) {
    for (let signs = 0; signs < ways; signs++) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (signs >> i) & 1 ? -differences[i]! : differences[i]!;
      count.add(sum / n);
    }
    return count.result(true, 2 / ways);
  }
  const random = seededRandom(seed);
  for (let draw = 0; draw < drawsFor(n); draw++) {
    let sum = 0;
    for (const d of differences) sum += random() < 0.5 ? d : -d;
    count.add(sum / n);
  }
  return count.result(false, 2 / ways);
}

class Tally {
  private oneWay = 0;
  private either = 0;
  private total = 0;
  private readonly seen: number;
  private readonly slack: number;

  /** Differences nearer than rounding are the same. */
  constructor(seen: number, spread: number) {
    this.seen = seen;
    this.slack = 1e-12 * spread;
  }

  add(difference: number): void {
    const sign = this.seen < 0 ? -1 : 1;
    const far = Math.abs(this.seen) - this.slack;
    this.total++;
    if (sign * difference >= far) this.oneWay++;
    if (Math.abs(difference) >= far) this.either++;
  }

  result(exact: boolean, leastP: number): PermutationTest {
    const share = (n: number) => (exact ? n / this.total : (n + 1) / (this.total + 1));
    return {
      difference: this.seen,
      asFarOneWay: this.oneWay,
      asFar: this.either,
      arrangements: this.total,
      exact,
      pOneWay: share(this.oneWay),
      p: share(this.either),
      leastP: Math.min(1, leastP),
    };
  }
}

function spreadOf(values: readonly number[]): number {
  return values.reduce((most, x) => Math.max(most, Math.abs(x)), Number.MIN_VALUE);
}

/** Number of ways to choose k of n. */
function binomial(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return Math.round(ways);
}

/** Sum of the values at every choice of k places. */
function deal(pool: readonly number[], k: number, use: (sum: number) => void): void {
  const choose = (from: number, left: number, sum: number): void => {
    if (left === 0) {
      use(sum);
      return;
    }
    for (let i = from; i + left <= pool.length; i++) choose(i + 1, left - 1, sum + pool[i]!);
  };
  choose(0, k, 0);
}
