import { quadraticStep } from './quadraticStep.ts';

/** A smooth function to make small while constraints vanish, within a box. Coordinates are scaled to about 1. */
export interface ConstrainedProblem {
  readonly size: number;
  readonly constraints: number;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Value at `x`; fills `c` with the constraints. Not finite where there is no value. */
  readonly evaluate: (x: Float64Array, c: Float64Array) => number;
}

export interface MinimumOptions {
  /** Half-width of the differences for slopes; default 1e-5. */
  readonly difference?: number;
  /** Longest step of one coordinate in a round; default 0.3. */
  readonly longestStep?: number;
  readonly rounds?: number;
  /** Constraints smaller than this are met; default 1e-8. */
  readonly met?: number;
  /** A promised gain smaller than this ends the search; default 1e-9. */
  readonly gain?: number;
  /** Asked before each round; true ends the search where it is. */
  readonly stop?: () => boolean;
}

export interface Minimum {
  readonly x: Float64Array;
  readonly value: number;
  /** Largest constraint left. */
  readonly miss: number;
  readonly multipliers: Float64Array;
  readonly rounds: number;
  /** True where the promised gain and the constraints fell below their limits. */
  readonly settled: boolean;
}

/**
 * Minimises under equality constraints and a box by sequential quadratic programming: damped BFGS curvature
 * (Powell 1978), steps from `quadraticStep`, the merit function f + μ·Σ|c| with halved steps and a second-order
 * correction (Nocedal & Wright 2006, §18.3). Slopes are central differences.
 */
export function constrainedMinimum(
  problem: ConstrainedProblem,
  start: ArrayLike<number>,
  options: MinimumOptions = {},
): Minimum {
  const { size: n, constraints: m, lower, upper, evaluate } = problem;
  const longest = options.longestStep ?? 0.3;
  const met = options.met ?? 1e-8;
  const least = options.gain ?? 1e-9;
  const slopesOf = new Slopes(problem, options.difference ?? 1e-5);
  const x = Float64Array.from(start, (v, i) => Math.min(upper[i]!, Math.max(lower[i]!, v)));
  let c: Float64Array = new Float64Array(m);
  let f = evaluate(x, c);
  const hessian = identity(n);
  const step = new Float64Array(n);
  const multipliers = new Float64Array(m);
  const down = new Float64Array(n);
  const up = new Float64Array(n);
  let weight = 1;
  let radius = longest;
  let fresh = true;
  let settled = false;
  let round = 0;
  if (!Number.isFinite(f)) return { x, value: f, miss: Number.NaN, multipliers, rounds: 0, settled };
  let here = slopesOf.at(x, f, c);
  for (; round < (options.rounds ?? 60); round++) {
    if (options.stop?.()) break;
    for (let i = 0; i < n; i++) {
      down[i] = lower[i]! - x[i]!;
      up[i] = upper[i]! - x[i]!;
    }
    const model = { gradient: here.f, hessian, constraint: c, slopes: here.c, down, up };
    if (!quadraticStep(model, step, multipliers)) {
      if (fresh) break;
      hessian.set(identity(n));
      fresh = true;
      continue;
    }
    // A step too long is shortened as a whole, so that it still heads for the constraints.
    const far = largestOf(step);
    const kept = far > radius ? radius / far : 1;
    for (let i = 0; i < n; i++) step[i] = kept * step[i]!;
    const along = dot(here.f, step);
    const amiss = sumOf(c);
    weight = Math.min(1e6, Math.max(weight * 0.7, 1.5 * largestOf(multipliers) + 1e-3));
    if (largestOf(c) < met && Math.abs(along) < least) {
      settled = true;
      break;
    }
    const merit = f + weight * amiss;
    const promise = Math.min(along - kept * weight * amiss, -1e-14);
    const found = lineSearch(problem, x, step, here.c, { merit, promise, weight });
    if (found === null) {
      // No way down along this step: forget the curvature, then shorten the steps, then give up.
      if (!fresh) {
        hessian.set(identity(n));
        fresh = true;
        continue;
      }
      radius *= 0.2;
      if (radius < 1e-7) break;
      continue;
    }
    const next = slopesOf.at(found.x, found.f, found.c);
    updateCurvature(hessian, fresh, x, found.x, here, next, multipliers);
    fresh = false;
    radius = found.part === 1 ? Math.min(longest, 2 * radius) : Math.max(radius * 0.7, 1e-6);
    x.set(found.x);
    f = found.f;
    c = found.c;
    here = next;
  }
  return { x, value: f, miss: largestOf(c), multipliers, rounds: round, settled };
}

interface Slope {
  readonly f: Float64Array;
  /** One row a constraint. */
  readonly c: Float64Array;
}

class Slopes {
  private readonly problem: ConstrainedProblem;
  private readonly h: number;

  constructor(problem: ConstrainedProblem, h: number) {
    this.problem = problem;
    this.h = h;
  }

  /** Central differences; one-sided at the box's walls and where a neighbour has no value. */
  at(x: Float64Array, f: number, c: Float64Array): Slope {
    const { size: n, constraints: m, lower, upper, evaluate } = this.problem;
    const slope = { f: new Float64Array(n), c: new Float64Array(m * n) };
    const trial = x.slice();
    const above = new Float64Array(m);
    const below = new Float64Array(m);
    for (let i = 0; i < n; i++) {
      const right = Math.min(upper[i]!, x[i]! + this.h);
      const left = Math.max(lower[i]!, x[i]! - this.h);
      let to = right;
      let from = left;
      trial[i] = right;
      let fAbove = evaluate(trial, above);
      trial[i] = left;
      let fBelow = evaluate(trial, below);
      trial[i] = x[i]!;
      if (!Number.isFinite(fAbove)) {
        to = x[i]!;
        fAbove = f;
        above.set(c);
      }
      if (!Number.isFinite(fBelow)) {
        from = x[i]!;
        fBelow = f;
        below.set(c);
      }
      const width = to - from;
      if (!(width > 0)) continue;
      slope.f[i] = (fAbove - fBelow) / width;
      for (let k = 0; k < m; k++) slope.c[k * n + i] = (above[k]! - below[k]!) / width;
    }
    return slope;
  }
}

interface Trial {
  readonly x: Float64Array;
  readonly f: number;
  readonly c: Float64Array;
  readonly part: number;
}

function lineSearch(
  { size: n, constraints: m, lower, upper, evaluate }: ConstrainedProblem,
  x: Float64Array,
  step: Float64Array,
  slopes: Float64Array,
  goal: { readonly merit: number; readonly promise: number; readonly weight: number },
): Trial | null {
  const inBox = (v: number, i: number) => Math.min(upper[i]!, Math.max(lower[i]!, v));
  for (let part = 1; part > 1e-6; part *= 0.5) {
    const trial = x.map((v, i) => inBox(v + part * step[i]!, i));
    const c = new Float64Array(m);
    const f = evaluate(trial, c);
    const wanted = goal.merit + 1e-4 * part * goal.promise;
    if (f + goal.weight * sumOf(c) <= wanted) return { x: trial, f, c, part };
    if (part < 1 || m === 0 || !Number.isFinite(f)) continue;
    // Second-order correction: the shortest further step that takes the constraints' curvature away.
    const back = shortestStep(slopes, c, n);
    if (back === null) continue;
    const mended = trial.map((v, i) => inBox(v + back[i]!, i));
    const c2 = new Float64Array(m);
    const f2 = evaluate(mended, c2);
    if (f2 + goal.weight * sumOf(c2) <= wanted) return { x: mended, f: f2, c: c2, part: 1 };
  }
  return null;
}

/** The shortest d with A d = −c. */
function shortestStep(slopes: Float64Array, c: Float64Array, n: number): Float64Array | null {
  const free = new Float64Array(n).fill(1e30);
  const step = new Float64Array(n);
  const model = {
    gradient: new Float64Array(n),
    hessian: identity(n),
    constraint: c,
    slopes,
    down: free.map((v) => -v),
    up: free,
  };
  return quadraticStep(model, step, new Float64Array(c.length)) ? step : null;
}

/** Damped BFGS update with the slopes of the Lagrangian (Powell 1978; Nocedal & Wright 2006, procedure 18.2). */
function updateCurvature(
  hessian: Float64Array,
  fresh: boolean,
  from: Float64Array,
  to: Float64Array,
  before: Slope,
  after: Slope,
  multipliers: Float64Array,
): void {
  const n = from.length;
  const s = to.map((v, i) => v - from[i]!);
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let change = after.f[i]! - before.f[i]!;
    for (let k = 0; k < multipliers.length; k++)
      change += multipliers[k]! * (after.c[k * n + i]! - before.c[k * n + i]!);
    y[i] = change;
  }
  const sy = dot(s, y);
  if (fresh && sy > 0) {
    // The first curvature seen sets the scale (Nocedal & Wright 2006, eq. 6.20).
    const scale = dot(y, y) / sy;
    for (let i = 0; i < n; i++) hessian[i * n + i] = scale;
  }
  const bs = new Float64Array(n);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) bs[i] = bs[i]! + hessian[i * n + j]! * s[j]!;
  const sbs = dot(s, bs);
  if (!(sbs > 1e-20)) return;
  const mix = sy >= 0.2 * sbs ? 1 : (0.8 * sbs) / (sbs - sy);
  const r = y.map((v, i) => mix * v + (1 - mix) * bs[i]!);
  const sr = dot(s, r);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      hessian[i * n + j] = hessian[i * n + j]! - (bs[i]! * bs[j]!) / sbs + (r[i]! * r[j]!) / sr;
}

function identity(n: number): Float64Array {
  const out = new Float64Array(n * n);
  for (let i = 0; i < n; i++) out[i * n + i] = 1;
  return out;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function sumOf(c: Float64Array): number {
  let sum = 0;
  for (const v of c) sum += Math.abs(v);
  return sum;
}

function largestOf(c: Float64Array): number {
  let most = 0;
  for (const v of c) most = Math.max(most, Math.abs(v));
  return most;
}
