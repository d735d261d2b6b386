import { MovingMoments } from './movingMoments.ts';

/**
 * Local polynomial least squares on true, uneven times (Cleveland & Devlin 1988, unweighted; on even steps it is
 * the Savitzky–Golay filter of 1964). Windows never reach over a break, so staging is not smeared.
 */

/** A time that no window may cross, and the side from which a query exactly at it is answered. */
export interface Break {
  readonly time_s: number;
  readonly side: 'before' | 'after';
}

export interface LocalPolynomialOptions {
  readonly degree: 1 | 2 | 3;
  /** Full width of the window. */
  readonly window_s: number;
  /** Least number of samples in a window; it is widened to the nearest samples of its segment to have them. */
  readonly minPoints: number;
  /** In rising order of time. */
  readonly breaks: readonly Break[];
}

export interface LocalFit {
  readonly value: Float64Array;
  /** First derivative, per second. */
  readonly rate: Float64Array;
}

/**
 * Fits `y` over time `t` (both finite, `t` strictly increasing) and evaluates fit and first derivative at each
 * time of `query` (rising). A segment with fewer than three samples tells no rate: its answers are NaN, for
 * the caller to bridge from the segments beside it.
 */
export function localPolynomial(
  t: Float64Array,
  y: Float64Array,
  query: Float64Array,
  options: LocalPolynomialOptions,
): LocalFit {
  const value = new Float64Array(query.length).fill(Number.NaN);
  const rate = new Float64Array(query.length).fill(Number.NaN);
  if (t.length === 0) return { value, rate };
  const { breaks } = options;
  const minPoints = Math.max(options.minPoints, options.degree + 1);
  let segment = 0;
  let from = 0;
  let to = segmentEnd(t, breaks, 0, 0);
  let low = 0;
  let high = 0;
  const out: [number, number] = [0, 0];
  const moving = new MovingMoments(t, y, options.window_s / 2);
  for (let q = 0; q < query.length; q++) {
    const at = query[q]!;
    while (segment < breaks.length && isPast(at, breaks[segment]!)) {
      from = to;
      segment++;
      to = segmentEnd(t, breaks, segment, from);
      low = from;
      high = from;
    }
    if (to - from < 3) continue;
    const left = at - options.window_s / 2;
    const right = at + options.window_s / 2;
    // The edges carry over from the query before: both only ever move forward on rising queries.
    while (low < to && t[low]! < left) low++;
    if (high < low) high = low;
    while (high < to && t[high]! <= right) high++;
    if (high - low >= Math.max(DENSE, minPoints)) {
      const y0 = moving.about(at, low, high, options.degree, moments, rhs);
      solved(options.degree + 1, y0, options.window_s / 2, out);
      value[q] = out[0];
      rate[q] = out[1];
      continue;
    }
    let a = low;
    let b = high;
    while (b - a < minPoints && (a > from || b < to)) {
      if (b >= to || (a > from && at - t[a - 1]! <= t[b]! - at)) a--;
      else b++;
    }
    fitAt(t, y, a, b, at, Math.min(options.degree, b - a - 1), out);
    value[q] = out[0];
    rate[q] = out[1];
  }
  return { value, rate };
}

function isPast(at: number, edge: Break): boolean {
  return at > edge.time_s || (at === edge.time_s && edge.side === 'after');
}

function segmentEnd(t: Float64Array, breaks: readonly Break[], segment: number, from: number): number {
  const edge = breaks[segment];
  if (edge === undefined) return t.length;
  let i = from;
  while (i < t.length && !isPast(t[i]!, edge)) i++;
  return i;
}

/** From so many samples in a window on, its sums are carried along instead of formed anew. */
const DENSE = 64;

const moments = new Float64Array(7);
const rhs = new Float64Array(4);
const normal = new Float64Array(16);

/** Least squares polynomial through samples a … b−1, about `at`; writes value and first derivative. */
function fitAt(
  t: Float64Array,
  y: Float64Array,
  a: number,
  b: number,
  at: number,
  degree: number,
  out: [number, number],
): void {
  const half = Math.max(t[b - 1]! - at, at - t[a]!, 1e-12);
  const y0 = y[a]!;
  // Sums in variables: this is the innermost loop of every smoother. A lower degree leaves the last of them unread.
  let [m1, m2, m3, m4, m5, m6] = [0, 0, 0, 0, 0, 0];
  let [r0, r1, r2, r3] = [0, 0, 0, 0];
  for (let i = a; i < b; i++) {
    const x = (t[i]! - at) / half;
    const d = y[i]! - y0;
    const x2 = x * x;
    const x3 = x2 * x;
    const x4 = x3 * x;
    const x5 = x4 * x;
    m1 += x;
    m2 += x2;
    m3 += x3;
    m4 += x4;
    m5 += x5;
    m6 += x5 * x;
    r0 += d;
    r1 += x * d;
    r2 += x2 * d;
    r3 += x3 * d;
  }
  moments[0] = b - a;
  moments[1] = m1;
  moments[2] = m2;
  moments[3] = m3;
  moments[4] = m4;
  moments[5] = m5;
  moments[6] = m6;
  rhs[0] = r0;
  rhs[1] = r1;
  rhs[2] = r2;
  rhs[3] = r3;
  solved(degree + 1, y0, half, out);
}

/** Value and first derivative of the polynomial of m coefficients from the sums, times in units of `half`. */
function solved(m: number, y0: number, half: number, out: [number, number]): void {
  for (let j = 0; j < m; j++) for (let k = 0; k < m; k++) normal[j * 4 + k] = moments[j + k]!;
  solveInPlace(m);
  out[0] = y0 + rhs[0]!;
  out[1] = m > 1 ? rhs[1]! / half : 0;
}

/** Gauss elimination of the positive definite m × m system in `normal`, `rhs`; the solution replaces `rhs`. */
function solveInPlace(m: number): void {
  for (let j = 0; j < m; j++) {
    const pivot = normal[j * 4 + j]!;
    if (Math.abs(pivot) < 1e-13) continue;
    for (let i = j + 1; i < m; i++) {
      const f = normal[i * 4 + j]! / pivot;
      for (let k = j; k < m; k++) normal[i * 4 + k]! -= f * normal[j * 4 + k]!;
      rhs[i]! -= f * rhs[j]!;
    }
  }
  for (let j = m - 1; j >= 0; j--) {
    let sum = rhs[j]!;
    for (let k = j + 1; k < m; k++) sum -= normal[j * 4 + k]! * rhs[k]!;
    const pivot = normal[j * 4 + j]!;
    rhs[j] = Math.abs(pivot) < 1e-13 ? 0 : sum / pivot;
  }
}
