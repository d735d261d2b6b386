import { leastSquares } from './identify/leastSquares.ts';
import type { Break } from './localPolynomial.ts';
import type { Samples } from './steps.ts';

export interface HingeOptions {
  readonly degree: 2 | 3;
  /** Lowest power that may jump at a break: 1 keeps the value, 2 keeps the slope too. */
  readonly order: 1 | 2;
  readonly window_s: number;
  readonly breaks: readonly Break[];
}

/**
 * Values (and rates) within half a window of the breaks by one polynomial that reaches over them and may bend
 * there: Σ cₖ·xᵏ + Σ over breaks dₖ·max(0, x − b)ᵏ, k from `order` up (truncated power splines, de Boor 1978). Both
 * sides of a break then share what must be continuous across it, which halves the error at a noisy channel's
 * edges. Changes `value` and `rate` in place.
 */
export function bendAtBreaks(
  samples: Samples,
  query: Float64Array,
  options: HingeOptions,
  value: Float64Array,
  rate: Float64Array | null,
): void {
  const { degree, order, window_s, breaks } = options;
  const { t, y } = samples;
  const half = window_s / 2;
  let low = 0;
  let high = 0;
  for (let q = 0; q < query.length; q++) {
    const at = query[q]!;
    if (!breaks.some((b) => Math.abs(b.time_s - at) < half)) continue;
    while (low < t.length && t[low]! < at - half) low++;
    while (high < t.length && t[high]! <= at + half) high++;
    const inside = breaks
      .map((b) => b.time_s)
      .filter((b) => b > t[low]! && b < t[Math.min(high, t.length) - 1]!);
    const bends = degree - order + 1;
    const cols = degree + 1 + inside.length * bends;
    const n = high - low;
    if (n < cols + 3) continue;
    const a = new Float64Array(n * cols);
    const b = new Float64Array(n);
    const row = new Float64Array(cols);
    for (let i = low; i < high; i++) {
      basis(row, (t[i]! - at) / half, inside, at, half, degree, order);
      a.set(row, (i - low) * cols);
      b[i - low] = y[i]! - y[low]!;
    }
    const { x } = leastSquares(cols, a, b);
    basis(row, 0, inside, at, half, degree, order);
    let sum = y[low]!;
    for (let k = 0; k < cols; k++) sum += row[k]! * x[k]!;
    value[q] = sum;
    if (rate === null) continue;
    let slope = x[1]!;
    inside.forEach((edge, e) => {
      const past = (at - edge) / half;
      for (let k = 0; k < bends; k++) {
        const power = order + k;
        if (past > 0) slope += x[degree + 1 + e * bends + k]! * power * past ** (power - 1);
      }
    });
    rate[q] = slope / half;
  }
}

function basis(
  row: Float64Array,
  x: number,
  edges: readonly number[],
  at: number,
  half: number,
  degree: number,
  order: number,
): void {
  let p = 1;
  for (let k = 0; k <= degree; k++) {
    row[k] = p;
    p *= x;
  }
  let c = degree + 1;
  for (const edge of edges) {
    const past = Math.max(0, x - (edge - at) / half);
    for (let k = order; k <= degree; k++) row[c++] = past ** k;
  }
}
