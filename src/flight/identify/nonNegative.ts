import { leastSquares, type Reduced } from './leastSquares.ts';

/**
 * Non-negative least squares by the active-set method of Lawson & Hanson (1974, ch. 23): min ‖R·x − c‖ with
 * x ≥ 0, except for the unknowns marked `free`, which may have either sign. Returns x.
 */
export function nonNegative(problem: Reduced, free: readonly boolean[] = []): Float64Array {
  const { cols: n, r, c } = problem;
  const x = new Float64Array(n);
  const inside = new Uint8Array(n);
  for (let k = 0; k < n; k++) if (free[k] === true) inside[k] = 1;
  const whole = solveInside(problem, new Uint8Array(n).fill(1));
  if (isPositive(whole, new Uint8Array(n).fill(1), free)) return whole;
  const tolerance = tolerances(problem);
  x.set(solveInside(problem, inside));
  for (let round = 0; round < 6 * n + 20; round++) {
    const gradient = gradientAt(problem, x);
    let best = -1;
    for (let k = 0; k < n; k++) {
      if (inside[k] === 0 && gradient[k]! > tolerance[k]! && (best === -1 || gradient[k]! > gradient[best]!))
        best = k;
    }
    if (best === -1) break;
    inside[best] = 1;
    for (;;) {
      const wanted = solveInside(problem, inside);
      if (isPositive(wanted, inside, free)) {
        x.set(wanted);
        break;
      }
      // Walk from x towards the wanted point until the first unknown reaches zero, and take it out.
      let share = 1;
      for (let k = 0; k < n; k++) {
        if (inside[k] === 1 && free[k] !== true && wanted[k]! <= 0)
          share = Math.min(share, x[k]! / (x[k]! - wanted[k]!));
      }
      for (let k = 0; k < n; k++) {
        x[k]! += share * (wanted[k]! - x[k]!);
        if (inside[k] === 1 && free[k] !== true && x[k]! <= 1e-15 * Math.abs(wanted[k]!)) {
          inside[k] = 0;
          x[k] = 0;
        }
      }
    }
  }
  return x;

  function solveInside(p: Reduced, set: Uint8Array): Float64Array {
    const index: number[] = [];
    for (let k = 0; k < n; k++) if (set[k] === 1) index.push(k);
    const out = new Float64Array(n);
    if (index.length === 0) return out;
    const a = new Float64Array(n * index.length);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < index.length; j++) a[i * index.length + j] = p.r[i * n + index[j]!]!;
    const solved = leastSquares(index.length, a, p.c);
    for (let j = 0; j < index.length; j++) out[index[j]!] = solved.x[j]!;
    return out;
  }

  function gradientAt(p: Reduced, at: Float64Array): Float64Array {
    const out = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      let miss = c[i]!;
      for (let j = 0; j < n; j++) miss -= r[i * n + j]! * at[j]!;
      for (let j = 0; j < n; j++) out[j]! += p.r[i * n + j]! * miss;
    }
    return out;
  }
}

function isPositive(x: Float64Array, inside: Uint8Array, free: readonly boolean[]): boolean {
  for (let k = 0; k < x.length; k++) if (inside[k] === 1 && free[k] !== true && x[k]! <= 0) return false;
  return true;
}

/** What rounding may leave of each unknown's gradient: its column's length times the response's. */
function tolerances(problem: Reduced): Float64Array {
  const { cols: n, r, c } = problem;
  let response = 0;
  for (let i = 0; i < n; i++) response += c[i]! * c[i]!;
  return Float64Array.from({ length: n }, (_, j) => {
    let column = 0;
    for (let i = 0; i <= j; i++) column += r[i * n + j]! ** 2;
    return 1e-13 * Math.sqrt(column * response);
  });
}
