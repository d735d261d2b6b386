import { linearSolve } from './linearSolve.ts';

/** One quadratic model: minimise g·d + ½ dᵀBd where the linearised constraints c + A d vanish. */
export interface QuadraticModel {
  readonly gradient: Float64Array;
  /** Row by row, size × size. */
  readonly hessian: Float64Array;
  /** Values of the constraints and their slopes, one row a constraint. */
  readonly constraint: Float64Array;
  readonly slopes: Float64Array;
  /** How far each coordinate may go down (≤ 0) and up (≥ 0). */
  readonly down: Float64Array;
  readonly up: Float64Array;
}

/**
 * Step and multipliers of the model within its box, by the equations of Karush, Kuhn and Tucker with an active
 * set (Nocedal & Wright 2006, §16.5): coordinates that the step would carry through a wall stop there. False
 * where the equations are singular.
 */
export function quadraticStep(model: QuadraticModel, step: Float64Array, multipliers: Float64Array): boolean {
  const n = step.length;
  const m = multipliers.length;
  const { gradient, hessian, constraint, slopes, down, up } = model;
  // 0 = free, −1 and 1 = held at the lower or upper wall
  const wall = new Int8Array(n);
  for (let round = 0; round < 4 * n + 4; round++) {
    const size = n + m;
    const matrix = new Float64Array(size * size);
    const right = new Float64Array(size);
    for (let i = 0; i < n; i++) {
      if (wall[i] !== 0) {
        matrix[i * size + i] = 1;
        right[i] = wall[i]! < 0 ? down[i]! : up[i]!;
        continue;
      }
      for (let j = 0; j < n; j++) matrix[i * size + j] = hessian[i * n + j]!;
      for (let k = 0; k < m; k++) matrix[i * size + n + k] = slopes[k * n + i]!;
      right[i] = -gradient[i]!;
    }
    for (let k = 0; k < m; k++) {
      for (let j = 0; j < n; j++) matrix[(n + k) * size + j] = slopes[k * n + j]!;
      matrix[(n + k) * size + n + k] = -1e-10;
      right[n + k] = -constraint[k]!;
    }
    if (!linearSolve(matrix, right)) return false;
    step.set(right.subarray(0, n));
    multipliers.set(right.subarray(n));
    if (!stopAtWorst(wall, step, down, up) && !release(model, wall, step, multipliers)) return true;
  }
  return true;
}

/** Holds the coordinate that goes farthest through its wall; false where none does. */
function stopAtWorst(wall: Int8Array, step: Float64Array, down: Float64Array, up: Float64Array): boolean {
  let worst = -1;
  let excess = 1e-12;
  for (let i = 0; i < step.length; i++) {
    if (wall[i] !== 0) continue;
    const over = Math.max(step[i]! - up[i]!, down[i]! - step[i]!);
    if (over <= excess) continue;
    worst = i;
    excess = over;
  }
  if (worst < 0) return false;
  wall[worst] = step[worst]! > up[worst]! ? 1 : -1;
  return true;
}

/** Lets go of the coordinate that the model pulls hardest away from its wall; false where none is. */
function release(
  { gradient, hessian, slopes }: QuadraticModel,
  wall: Int8Array,
  step: Float64Array,
  multipliers: Float64Array,
): boolean {
  const n = step.length;
  let best = -1;
  let pull = 1e-9;
  for (let i = 0; i < n; i++) {
    if (wall[i] === 0) continue;
    let slope = gradient[i]!;
    for (let j = 0; j < n; j++) slope += hessian[i * n + j]! * step[j]!;
    for (let k = 0; k < multipliers.length; k++) slope += multipliers[k]! * slopes[k * n + i]!;
    // Away from the upper wall is down, where the slope has to be positive.
    const inward = wall[i]! > 0 ? slope : -slope;
    if (inward <= pull) continue;
    pull = inward;
    best = i;
  }
  if (best < 0) return false;
  wall[best] = 0;
  return true;
}
