import { sampleRankCorrelation } from 'simple-statistics';
import { seededRandom } from './seededRandom.ts';

/** Spearman's rank correlation and how easily chance gives as much. */
export interface RankCorrelation {
  /** −1 to 1, mid-ranks for ties. */
  readonly rho: number;
  /** Share of the orders of y with |rho| as great. */
  readonly p: number;
  /** True where every order was counted. */
  readonly exact: boolean;
  readonly points: number;
}

/** 8! orders are counted out; of more points so many are drawn, of a great many fewer: p hardly scatters then. */
const COUNTED = 8;
const drawsFor = (points: number): number => Math.max(1000, Math.min(5000, Math.round(1e6 / points)));

/**
 * Spearman's rank correlation with its permutation p. Null for fewer than three points or where either side is
 * all one value. (Spearman 1904; Kendall 1970, Rank Correlation Methods.)
 */
export function rankCorrelation(
  x: readonly number[],
  y: readonly number[],
  seed = 1,
): RankCorrelation | null {
  const n = x.length;
  if (n < 3 || new Set(x).size < 2 || new Set(y).size < 2) return null;
  const rho = sampleRankCorrelation([...x], [...y]);
  const a = ranks(x);
  const b = ranks(y);
  // Only Σ a·b changes with the order; its distance from what equal shares would give measures |rho|.
  const centre = (sum(a) * sum(b)) / n;
  const measure = (order: readonly number[]) =>
    Math.abs(order.reduce((s, rank, i) => s + a[i]! * rank, 0) - centre);
  const seen = measure(b) - 1e-9;
  if (n <= COUNTED) {
    let far = 0;
    let all = 0;
    orders(b.slice(), n, (order) => {
      all++;
      if (measure(order) >= seen) far++;
    });
    return { rho, p: far / all, exact: true, points: n };
  }
  const random = seededRandom(seed);
  const order = b.slice();
  const draws = drawsFor(n);
  let far = 0;
  for (let draw = 0; draw < draws; draw++) {
    for (let i = n - 1; i > 0; i--) {
      const j = Math.floor(random() * (i + 1));
      const kept = order[i]!;
      order[i] = order[j]!;
      order[j] = kept;
    }
    if (measure(order) >= seen) far++;
  }
  return { rho, p: (far + 1) / (draws + 1), exact: false, points: n };
}

function sum(values: readonly number[]): number {
  return values.reduce((s, v) => s + v, 0);
}

/** Mid-ranks. */
function ranks(values: readonly number[]): number[] {
  const order = values.map((_, i) => i).sort((i, j) => values[i]! - values[j]!);
  const out = new Array<number>(values.length).fill(0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && values[order[to + 1]!] === values[order[from]!]) to++;
    for (let k = from; k <= to; k++) out[order[k]!] = (from + to) / 2;
    from = to + 1;
  }
  return out;
}

/** Every order of the values (Heap 1963). */
function orders(values: number[], k: number, use: (order: readonly number[]) => void): void {
  if (k === 1) {
    use(values);
    return;
  }
  for (let i = 0; i < k; i++) {
    orders(values, k - 1, use);
    const j = k % 2 === 0 ? i : 0;
    if (i < k - 1) {
      const kept = values[j]!;
      values[j] = values[k - 1]!;
      values[k - 1] = kept;
    }
  }
}
