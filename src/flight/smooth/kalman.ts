/**
 * A linear Gaussian state-space model, filtered forward (Kalman 1960) and smoothed over the whole record (Rauch,
 * Tung & Striebel 1965), the latter in the form of Bryson & Frazier, which inverts nothing: r ← Hᵀv/S + (I − KH)ᵀr
 * over an observation, r ← Fᵀr over a step, x̂ = a + P·r, and N alike for the covariance (Durbin & Koopman 2012,
 * §4.4 and, for observations taken one by one, §6.4). Time and memory grow with the number of nodes.
 */

/** What is known of the state at nodes 0 … n−1; matrices row by row. */
export interface StateModel {
  /** Length of the state. */
  readonly size: number;
  readonly nodes: number;
  /** Mean and covariance before the first node's observations. */
  readonly start: Float64Array;
  readonly startCovariance: Float64Array;
  /** The step that leads to node `k` ≥ 1; what it returned before may be written over. */
  readonly step: (k: number) => Step;
  readonly observations: Observations;
}

/** How the state goes on from one node to the next. */
export interface Step {
  readonly transition: Float64Array;
  /** Covariance of what is added on the way. */
  readonly process: Float64Array;
}

/** Scalar observations y = H·x + noise, in rising order of their nodes. */
export interface Observations {
  readonly node: Int32Array;
  readonly y: Float64Array;
  readonly variance: Float64Array;
  /** H, one row of the state's length for each observation. */
  readonly rows: Float64Array;
}

/** The forward pass. */
export interface Filtered {
  /** Logarithm of the likelihood of all observations. */
  readonly logLikelihood: number;
  /** Mean and covariance at each node before its own observations. */
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
  /** Of each observation: innovation, its variance, and the gain on the state. */
  readonly innovation: Float64Array;
  readonly innovationVariance: Float64Array;
  readonly gain: Float64Array;
}

/** Mean and covariance at each node, given all observations. */
export interface Smoothed {
  readonly mean: Float64Array;
  readonly covariance: Float64Array;
}

/** Runs the filter. */
export function kalmanFilter(model: StateModel): Filtered {
  const { size: n, nodes, observations } = model;
  const { node, y, variance, rows } = observations;
  const nn = n * n;
  const mean = new Float64Array(nodes * n);
  const covariance = new Float64Array(nodes * nn);
  const innovation = new Float64Array(y.length);
  const innovationVariance = new Float64Array(y.length);
  const gain = new Float64Array(y.length * n);
  const a = Float64Array.from(model.start);
  const P = Float64Array.from(model.startCovariance);
  const work = new Float64Array(nn);
  const column = new Float64Array(n);
  let logLikelihood = 0;
  let o = 0;
  for (let k = 0; k < nodes; k++) {
    if (k > 0) {
      const { transition: F, process: Q } = model.step(k);
      multiply(F, a, column, n, 1);
      a.set(column);
      multiply(F, P, work, n, n);
      multiplyTransposed(work, F, P, n);
      for (let i = 0; i < nn; i++) P[i]! += Q[i]!;
    }
    mean.set(a, k * n);
    covariance.set(P, k * nn);
    for (; o < y.length && node[o] === k; o++) {
      const h = o * n;
      let v = y[o]!;
      let S = variance[o]!;
      for (let i = 0; i < n; i++) {
        let sum = 0;
        for (let j = 0; j < n; j++) sum += P[i * n + j]! * rows[h + j]!;
        column[i] = sum;
        v -= rows[h + i]! * a[i]!;
        S += rows[h + i]! * sum;
      }
      innovation[o] = v;
      innovationVariance[o] = S;
      for (let i = 0; i < n; i++) {
        const K = column[i]! / S;
        gain[h + i] = K;
        a[i]! += K * v;
        for (let j = 0; j < n; j++) P[i * n + j]! -= K * column[j]!;
      }
      logLikelihood -= (Math.log(2 * Math.PI * S) + (v * v) / S) / 2;
    }
  }
  return { logLikelihood, mean, covariance, innovation, innovationVariance, gain };
}

/** Smooths what the filter left. */
export function kalmanSmooth(model: StateModel, filtered: Filtered): Smoothed {
  const { size: n, nodes, observations } = model;
  const { node, rows } = observations;
  const nn = n * n;
  const mean = new Float64Array(nodes * n);
  const covariance = new Float64Array(nodes * nn);
  const r = new Float64Array(n);
  const N = new Float64Array(nn);
  const work = new Float64Array(nn);
  const other = new Float64Array(nn);
  const column = new Float64Array(n);
  let o = node.length - 1;
  for (let k = nodes - 1; k >= 0; k--) {
    for (; o >= 0 && node[o] === k; o--) backOver(o);
    const P = filtered.covariance.subarray(k * nn, (k + 1) * nn);
    multiply(P, r, column, n, 1);
    for (let i = 0; i < n; i++) mean[k * n + i] = filtered.mean[k * n + i]! + column[i]!;
    multiply(P, N, work, n, n);
    multiply(work, P, other, n, n);
    for (let i = 0; i < nn; i++) covariance[k * nn + i] = P[i]! - other[i]!;
    if (k === 0) break;
    const F = model.step(k).transition;
    transposeMultiply(F, r, column, n, 1);
    r.set(column);
    transposeMultiply(F, N, work, n, n);
    multiply(work, F, N, n, n);
  }
  return { mean, covariance };

  /** Takes r and N from after an observation to before it. */
  function backOver(o: number): void {
    const h = o * n;
    const S = filtered.innovationVariance[o]!;
    let along = 0;
    for (let i = 0; i < n; i++) along += filtered.gain[h + i]! * r[i]!;
    const pull = filtered.innovation[o]! / S - along;
    let twice = 1 / S;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += N[i * n + j]! * filtered.gain[h + j]!;
      column[i] = sum;
      twice += filtered.gain[h + i]! * sum;
    }
    for (let i = 0; i < n; i++) {
      const hi = rows[h + i]!;
      r[i]! += hi * pull;
      for (let j = 0; j < n; j++) {
        const hj = rows[h + j]!;
        N[i * n + j]! += hi * hj * twice - hi * column[j]! - column[i]! * hj;
      }
    }
  }
}

/** out = A·B, A n × n, B n × m; transitions are mostly zeros, which are passed over. */
function multiply(A: Float64Array, B: Float64Array, out: Float64Array, n: number, m: number): void {
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < m; j++) out[i * m + j] = 0;
    for (let k = 0; k < n; k++) {
      const f = A[i * n + k]!;
      if (f === 0) continue;
      for (let j = 0; j < m; j++) out[i * m + j]! += f * B[k * m + j]!;
    }
  }
}

/** out = A·Bᵀ, all n × n, the zeros of B passed over. */
function multiplyTransposed(A: Float64Array, B: Float64Array, out: Float64Array, n: number): void {
  out.fill(0);
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < n; k++) {
      const f = B[j * n + k]!;
      if (f === 0) continue;
      for (let i = 0; i < n; i++) out[i * n + j]! += A[i * n + k]! * f;
    }
  }
}

/** out = Aᵀ·B, A n × n, B n × m, the zeros of A passed over. */
function transposeMultiply(A: Float64Array, B: Float64Array, out: Float64Array, n: number, m: number): void {
  for (let i = 0; i < n * m; i++) out[i] = 0;
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      const f = A[k * n + i]!;
      if (f === 0) continue;
      for (let j = 0; j < m; j++) out[i * m + j]! += f * B[k * m + j]!;
    }
  }
}
