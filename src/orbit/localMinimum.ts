const DIFFERENCE = 3e-6;
const ROUNDS = 24;
const HALVINGS = 7;
/** A gain below this part of the value is none. */
const CONVERGED = 1e-12;
/** Above what is least already, neither a gain below this matters, nor one that would have to be so many times as large to get there. */
const NO_MATTER = 1e-9;
const FAR = 30;

/** Memory for a search over so many coordinates, kept from search to search: thousands follow one another. */
const desks = [1, 2, 3].map((n) => ({
  g: new Float64Array(n),
  slope: new Float64Array(n),
  hessian: new Float64Array(n * n),
  step: new Float64Array(n),
  trial: new Float64Array(n),
  side: new Float64Array(n),
  beside: new Float64Array(n),
  free: new Uint8Array(n),
}));
const factor = new Float64Array(9);

/**
 * Improves a point to the nearest local minimum of a function on the unit box, in place, and returns the value
 * there. Newton's method with differences for slope and curvature, one-sided at the walls; a coordinate on a wall
 * that the slope presses against stays there (Nocedal & Wright 2006, §3.4 and §16.7). Up to three coordinates.
 * The function may be infinite inside the box; the value never rises above that of the start. The function must
 * not search a minimum itself.
 */
export function localMinimum(
  f: (x: Float64Array) => number,
  x: Float64Array,
  start: number,
  least = Number.POSITIVE_INFINITY,
): number {
  const n = x.length;
  const { g, slope, hessian, step, trial, side, beside, free } = desks[n - 1]!;
  let value = start;
  let whole = false;
  for (let round = 0; round < ROUNDS; round++) {
    trial.set(x);
    for (let i = 0; i < n; i++) {
      // Towards the middle of the box, so that both points of the difference lie inside.
      const h = x[i]! > 0.5 ? -DIFFERENCE : DIFFERENCE;
      const central = x[i]! > DIFFERENCE && x[i]! < 1 - DIFFERENCE;
      side[i] = h;
      trial[i] = x[i]! + h;
      const near = f(trial);
      trial[i] = central ? x[i]! - h : x[i]! + 2 * h;
      const far = f(trial);
      trial[i] = x[i]!;
      beside[i] = near;
      g[i] = central ? (near - far) / (2 * h) : (4 * near - 3 * value - far) / (2 * h);
      hessian[i * n + i] = central ? (near - 2 * value + far) / (h * h) : (value - 2 * near + far) / (h * h);
      const pressed = (x[i]! <= 0 && g[i]! > 0) || (x[i]! >= 1 && g[i]! < 0);
      free[i] = pressed || !Number.isFinite(g[i]!) ? 0 : 1;
    }
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) {
        let cross = 0;
        if (free[i] && free[j]) {
          trial[i] = x[i]! + side[i]!;
          trial[j] = x[j]! + side[j]!;
          cross = (f(trial) - beside[i]! - beside[j]! + value) / (side[i]! * side[j]!);
          trial[i] = x[i]!;
          trial[j] = x[j]!;
          if (!Number.isFinite(cross)) cross = 0;
        }
        hessian[i * n + j] = cross;
        hessian[j * n + i] = cross;
      }
    }
    // Its own copy: the step through a wall changes the slopes.
    slope.set(g);
    if (!stepInBox(hessian, slope, free, x, step)) break;
    const gain = foretold(hessian, g, step);
    if (gain <= CONVERGED * (1 + Math.abs(value))) break;
    if (value > least && (gain <= NO_MATTER || (whole && FAR * gain < value - least))) break;
    let improved = 0;
    let scale = 1;
    for (let k = 0; k <= HALVINGS; k++, scale *= 0.35) {
      for (let i = 0; i < n; i++) trial[i] = Math.min(1, Math.max(0, x[i]! + scale * step[i]!));
      const there = f(trial);
      if (there < value) {
        improved = value - there;
        whole = k === 0;
        value = there;
        x.set(trial);
        break;
      }
    }
    if (improved <= CONVERGED * (1 + Math.abs(value))) break;
  }
  return value;
}

/**
 * Newton's step for the free coordinates. A coordinate that it would carry through a wall goes to the wall, and the
 * step is found anew for the others. False when nothing can move.
 */
function stepInBox(
  hessian: Float64Array,
  slope: Float64Array,
  free: Uint8Array,
  x: Float64Array,
  step: Float64Array,
): boolean {
  const n = x.length;
  step.fill(0);
  for (;;) {
    if (!newtonStep(hessian, slope, free, step)) break;
    let worst = -1;
    let excess = 0;
    for (let i = 0; i < n; i++) {
      if (!free[i]) continue;
      const beyond = Math.max(-(x[i]! + step[i]!), x[i]! + step[i]! - 1);
      if (beyond > excess) {
        excess = beyond;
        worst = i;
      }
    }
    if (worst < 0) break;
    const toWall = (step[worst]! < 0 ? 0 : 1) - x[worst]!;
    free[worst] = 0;
    step[worst] = toWall;
    for (let i = 0; i < n; i++) if (free[i]) slope[i] = slope[i]! + hessian[i * n + worst]! * toWall;
  }
  for (let i = 0; i < n; i++) if (step[i] !== 0) return true;
  return false;
}

/** What the quadratic model says that a step takes off the value, or that its slope alone does where that is less. */
function foretold(hessian: Float64Array, g: Float64Array, step: Float64Array): number {
  const n = g.length;
  let slope = 0;
  let bend = 0;
  for (let i = 0; i < n; i++) {
    slope += g[i]! * step[i]!;
    for (let j = 0; j < n; j++) bend += step[i]! * hessian[i * n + j]! * step[j]!;
  }
  return bend > 0 ? -slope - 0.5 * bend : Number.POSITIVE_INFINITY;
}

/**
 * Solves (H + λI) step = −g over the free coordinates, λ as small as makes the matrix positive definite, by
 * Cholesky factors; no coordinate moves by more than 0.3. False when nothing can move.
 */
function newtonStep(hessian: Float64Array, g: Float64Array, free: Uint8Array, step: Float64Array): boolean {
  const n = g.length;
  let size = 0;
  let slope = 0;
  for (let i = 0; i < n; i++) {
    if (!free[i]) continue;
    step[i] = 0;
    size = Math.max(size, Math.abs(hessian[i * n + i]!));
    slope = Math.max(slope, Math.abs(g[i]!));
  }
  if (slope < 1e-13) return false;
  for (
    let shift = 0;
    shift < 1e6 * (size + slope);
    shift = shift === 0 ? 1e-3 * (size + slope) : shift * 10
  ) {
    if (!cholesky(hessian, shift, free)) continue;
    for (let i = 0; i < n; i++) {
      if (!free[i]) continue;
      let sum = -g[i]!;
      for (let k = 0; k < i; k++) if (free[k]) sum -= factor[i * n + k]! * step[k]!;
      step[i] = sum / factor[i * n + i]!;
    }
    let longest = 0;
    for (let i = n - 1; i >= 0; i--) {
      if (!free[i]) continue;
      let sum = step[i]!;
      for (let k = i + 1; k < n; k++) if (free[k]) sum -= factor[k * n + i]! * step[k]!;
      step[i] = sum / factor[i * n + i]!;
      longest = Math.max(longest, Math.abs(step[i]!));
    }
    if (longest > 0.3) for (let i = 0; i < n; i++) if (free[i]) step[i] = (0.3 / longest) * step[i]!;
    return true;
  }
  return false;
}

function cholesky(hessian: Float64Array, shift: number, free: Uint8Array): boolean {
  const n = free.length;
  for (let i = 0; i < n; i++) {
    if (!free[i]) continue;
    for (let j = 0; j <= i; j++) {
      if (!free[j]) continue;
      let sum = hessian[i * n + j]! + (i === j ? shift : 0);
      for (let k = 0; k < j; k++) if (free[k]) sum -= factor[i * n + k]! * factor[j * n + k]!;
      if (i === j) {
        if (!(sum > 1e-9 * (Math.abs(hessian[i * n + i]!) + shift))) return false;
        factor[i * n + i] = Math.sqrt(sum);
      } else factor[i * n + j] = sum / factor[j * n + j]!;
    }
  }
  return true;
}
