/**
 * Linear least squares by Householder reflections (Golub 1965; Lawson & Hanson 1974, ch. 11), which does not
 * square the condition number as normal equations would.
 */

/** A solved problem min ‖A·x − b‖. */
export interface LeastSquares {
  readonly x: Float64Array;
  /** ‖A·x − b‖². */
  readonly residualSquares: number;
  /** (AᵀA)⁻¹, row by row: times the variance of one response it is the covariance of x. */
  readonly inverseNormal: Float64Array;
}

/** A problem reduced to as many rows as unknowns: ‖A·x − b‖² = ‖R·x − c‖² + rest, R upper triangular. */
export interface Reduced {
  readonly cols: number;
  /** cols × cols, row by row. */
  readonly r: Float64Array;
  readonly c: Float64Array;
  readonly rest: number;
}

/** A diagonal of R this much smaller than its column counts as zero: the column adds nothing of its own. */
const RANK = 1e-13;

/**
 * Reduces the problem whose rows (each `cols` coefficients) stand one after the other in `a`, with responses
 * `b`. Neither is changed. Fewer rows than columns leave zero rows in R.
 */
export function reduce(cols: number, a: Float64Array, b: Float64Array): Reduced {
  const rows = b.length;
  // Column by column, the responses last: most reviews are over before the compiler has taken up these loops.
  const columns: Float64Array[] = [];
  for (let j = 0; j < cols; j++) {
    const column = new Float64Array(rows);
    for (let i = 0, at = j; i < rows; i++, at += cols) column[i] = a[at]!;
    columns.push(column);
  }
  const y = Float64Array.from(b);
  columns.push(y);
  const steps = Math.min(rows, cols);
  for (let k = 0; k < steps; k++) {
    const pivot = columns[k]!;
    let largest = 0;
    for (let i = k; i < rows; i++) {
      const size = Math.abs(pivot[i]!);
      if (size > largest || Number.isNaN(size)) largest = size;
    }
    if (largest === 0) continue;
    let squares = 0;
    for (let i = k; i < rows; i++) {
      const share = pivot[i]! / largest;
      squares += share * share;
    }
    const head = pivot[k]!;
    const norm = (head > 0 ? -1 : 1) * largest * Math.sqrt(squares);
    // Reflector v = column − norm·e_k, kept in the column itself; vᵀv/2 = norm·(norm − head).
    pivot[k] = head - norm;
    const half = norm * (norm - head);
    for (let j = k + 1; j <= cols; j++) {
      const column = columns[j]!;
      let dot = 0;
      for (let i = k; i < rows; i++) dot += pivot[i]! * column[i]!;
      if (dot === 0) continue;
      const f = dot / half;
      for (let i = k; i < rows; i++) column[i]! -= f * pivot[i]!;
    }
    pivot[k] = norm;
  }
  const r = new Float64Array(cols * cols);
  const c = new Float64Array(cols);
  for (let k = 0; k < steps; k++) {
    for (let j = k; j < cols; j++) r[k * cols + j] = columns[j]![k]!;
    c[k] = y[k]!;
  }
  let rest = 0;
  for (let i = steps; i < rows; i++) rest += y[i]! * y[i]!;
  return { cols, r, c, rest };
}

/**
 * Least-squares solution of `rows × cols` coefficients `a` (row by row) and responses `b`. An unknown that the
 * rows cannot separate from those before it gets 0, and an infinite variance.
 */
export function leastSquares(cols: number, a: Float64Array, b: Float64Array): LeastSquares {
  return solveReduced(reduce(cols, a, b));
}

/** Solution and covariance factor of a reduced problem. */
export function solveReduced(problem: Reduced): LeastSquares {
  const { cols: n, r, c } = problem;
  const open = new Uint8Array(n);
  for (let k = 0; k < n; k++) {
    let size = 0;
    for (let i = 0; i <= k; i++) size = Math.max(size, Math.abs(r[i * n + k]!));
    if (Math.abs(r[k * n + k]!) <= RANK * size) open[k] = 1;
  }
  const x = new Float64Array(n);
  let residualSquares = problem.rest;
  for (let k = n - 1; k >= 0; k--) {
    if (open[k] === 1) {
      residualSquares += c[k]! * c[k]!;
      continue;
    }
    let sum = c[k]!;
    for (let j = k + 1; j < n; j++) sum -= r[k * n + j]! * x[j]!;
    x[k] = sum / r[k * n + k]!;
  }
  const inverse = invertUpper(r, n, open);
  const inverseNormal = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = i; j < n; j++) {
      let sum = 0;
      for (let k = j; k < n; k++) sum += inverse[i * n + k]! * inverse[j * n + k]!;
      if (i === j && open[i] === 1) sum = Number.POSITIVE_INFINITY;
      inverseNormal[i * n + j] = sum;
      inverseNormal[j * n + i] = sum;
    }
  }
  return { x, residualSquares, inverseNormal };
}

function invertUpper(r: Float64Array, n: number, open: Uint8Array): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    if (open[j] === 1) continue;
    inverse[j * n + j] = 1 / r[j * n + j]!;
    for (let i = j - 1; i >= 0; i--) {
      if (open[i] === 1) continue;
      let sum = 0;
      for (let k = i + 1; k <= j; k++) sum += r[i * n + k]! * inverse[k * n + j]!;
      inverse[i * n + j] = -sum / r[i * n + i]!;
    }
  }
  return inverse;
}
