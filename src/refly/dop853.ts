import type { SparseRow } from './dop853Coefficients.ts';
import { denseRows, errorRow3, errorRow5, nodes, stageRows } from './dop853Coefficients.ts';

/** Right-hand side: writes dy/dt at time t and state y into `rate`. Must not keep or change `y`. */
export type Derivative = (t: number, y: Float64Array, rate: Float64Array) => void;

export interface Dop853Options {
  /** Relative tolerance of the local error; default 1e-9. */
  readonly relativeTolerance?: number;
  /** Absolute tolerance, one for all components or one each, in the component's unit; default 1e-9. */
  readonly absoluteTolerance?: number | Float64Array;
  /** Longest step; default none. */
  readonly maxStep?: number;
  /** Takes steps of exactly this length (the last one shorter) without error control. */
  readonly fixedStep?: number;
}

const endRow = 12;
const lastStage = 15;
const safety = 0.9;
const leastShrink = 1 / 3;
const mostGrowth = 6;

/**
 * Dormand–Prince 8(5,3) with step control and dense output (Hairer, Nørsett & Wanner, Solving Ordinary
 * Differential Equations I, 1993, II.5 and II.6). Works on its own buffers, so a step allocates nothing.
 * The right-hand side has to be smooth: at every discontinuity the caller stops (`advance` never steps past its
 * limit) and calls `restart`.
 */
export class Dop853 {
  readonly size: number;
  /** Present time. */
  time = 0;
  /** Time at the start of the last step. */
  previousTime = 0;
  /** Steps taken and right-hand sides evaluated since the object was made. */
  steps = 0;
  evaluations = 0;
  private readonly derivative: Derivative;
  private readonly relative: number;
  private readonly absolute: Float64Array;
  private readonly maxStep: number;
  private readonly fixedStep: number;
  private current: Float64Array;
  private old: Float64Array;
  private next: Float64Array;
  private readonly trial: Float64Array;
  /** Derivatives of the stages, one buffer each. */
  private readonly k: readonly Float64Array[];
  private readonly dense: readonly Float64Array[];
  private denseReady = false;
  private stepHint = 0;

  constructor(size: number, derivative: Derivative, options: Dop853Options = {}) {
    this.size = size;
    this.derivative = derivative;
    this.relative = options.relativeTolerance ?? 1e-9;
    const absolute = options.absoluteTolerance ?? 1e-9;
    this.absolute = typeof absolute === 'number' ? new Float64Array(size).fill(absolute) : absolute;
    this.maxStep = options.maxStep ?? Number.POSITIVE_INFINITY;
    this.fixedStep = options.fixedStep ?? 0;
    const buffer = () => new Float64Array(size);
    this.current = buffer();
    this.old = buffer();
    this.next = buffer();
    this.trial = buffer();
    this.k = Array.from({ length: lastStage + 1 }, buffer);
    this.dense = Array.from({ length: 7 }, buffer);
  }

  /** Present state; valid until the next `advance` or `restart`. */
  get state(): Float64Array {
    return this.current;
  }

  /** Rate of the present state, as the right-hand side gave it. */
  get rate(): Float64Array {
    return this.k[endRow]!;
  }

  /** Sets time and state and evaluates the right-hand side there; call at the start and at every discontinuity. */
  restart(time: number, state: ArrayLike<number>): void {
    this.time = time;
    this.previousTime = time;
    for (let i = 0; i < this.size; i++) this.current[i] = state[i]!;
    this.evaluate(time, this.current, endRow);
    this.old.set(this.current);
    this.denseReady = false;
  }

  /** Forgets the last step's length, so that what follows does not depend on what was integrated before. */
  forgetStep(): void {
    this.stepHint = 0;
  }

  /**
   * Takes one accepted step toward `limit` (later or earlier than the present time), never past it.
   * Returns false, state unchanged, when no step is short enough (a right-hand side that is not finite).
   */
  advance(limit: number): boolean {
    const direction = limit >= this.time ? 1 : -1;
    const left = Math.abs(limit - this.time);
    if (left === 0) return true;
    this.k[0]!.set(this.k[endRow]!);
    let step = this.fixedStep || this.stepHint || this.firstStep(direction, left);
    step = Math.min(step, this.maxStep);
    let rejected = false;
    for (;;) {
      // A last step that would leave a sliver takes the sliver along.
      const last = step * (1 + 1e-10) >= left;
      const h = direction * (last ? left : step);
      this.stages(h);
      const error = this.fixedStep > 0 ? 0 : this.errorNorm(h);
      if (error <= 1) {
        const growth = error === 0 ? mostGrowth : Math.min(mostGrowth, safety * error ** (-1 / 8));
        const grown = Math.abs(h) * Math.max(leastShrink, rejected ? Math.min(1, growth) : growth);
        // A step cut short by the limit says nothing against the longer one it was cut from.
        this.stepHint = last ? Math.max(grown, step) : grown;
        this.accept(h, last ? limit : this.time + h);
        return true;
      }
      rejected = true;
      step = Math.abs(h) * (Number.isFinite(error) ? Math.max(leastShrink, safety * error ** (-1 / 8)) : 0.1);
      this.stepHint = step;
      if (step <= 1e-14 * Math.max(Math.abs(this.time), 1)) return false;
    }
  }

  /** State at `t` within the last step, from the continuous extension of order 7, into `into`. */
  at(t: number, into: Float64Array): Float64Array {
    if (t === this.time) {
      into.set(this.current);
      return into;
    }
    if (!this.denseReady) this.prepareDense();
    const [d0, d1, d2, d3, d4, d5, d6] = this.dense as readonly [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const x = (t - this.previousTime) / (this.time - this.previousTime);
    const w = 1 - x;
    // Hairer et al. 1993, II.6 (nested form of the continuous extension).
    for (let i = 0; i < this.size; i++)
      into[i] =
        this.old[i]! +
        x * (d0[i]! + w * (d1[i]! + x * (d2[i]! + w * (d3[i]! + x * (d4[i]! + w * (d5[i]! + x * d6[i]!))))));
    return into;
  }

  private evaluate(t: number, y: Float64Array, row: number): void {
    this.evaluations++;
    this.derivative(t, y, this.k[row]!);
  }

  /** into = base + h Σ weight · k. */
  private combine(row: SparseRow, h: number, base: Float64Array, into: Float64Array): void {
    const [columns, weights] = row;
    into.set(base);
    for (let j = 0; j < columns.length; j++) {
      const a = h * weights[j]!;
      const k = this.k[columns[j]!]!;
      for (let i = 0; i < into.length; i++) into[i] = into[i]! + a * k[i]!;
    }
  }

  private stages(h: number): void {
    for (let s = 1; s < endRow; s++) {
      this.combine(stageRows[s]!, h, this.current, this.trial);
      this.evaluate(this.time + nodes[s]! * h, this.trial, s);
    }
    this.combine(stageRows[endRow]!, h, this.current, this.next);
  }

  private accept(h: number, end: number): void {
    const spare = this.old;
    this.old = this.current;
    this.current = this.next;
    this.next = spare;
    this.previousTime = this.time;
    this.evaluate(this.time + h, this.current, endRow);
    this.time = end;
    this.steps++;
    this.denseReady = false;
  }

  /** Error of the step by the two embedded formulas together, 1 = at tolerance (Hairer et al. 1993, II.10). */
  private errorNorm(h: number): number {
    let sum5 = 0;
    let sum3 = 0;
    for (let i = 0; i < this.size; i++) {
      const size = Math.max(Math.abs(this.current[i]!), Math.abs(this.next[i]!));
      const scale = this.absolute[i]! + this.relative * size;
      const e5 = this.weighted(errorRow5, i) / scale;
      const e3 = this.weighted(errorRow3, i) / scale;
      sum5 += e5 * e5;
      sum3 += e3 * e3;
    }
    if (sum5 === 0 && sum3 === 0) return 0;
    const error = (Math.abs(h) * sum5) / Math.sqrt(this.size * (sum5 + 0.01 * sum3));
    return Number.isNaN(error) ? Number.POSITIVE_INFINITY : error;
  }

  private weighted([columns, weights]: SparseRow, i: number): number {
    let sum = 0;
    for (let j = 0; j < columns.length; j++) sum += weights[j]! * this.k[columns[j]!]![i]!;
    return sum;
  }

  /** First guess of the step from the sizes of y, y′ and y″ (Hairer et al. 1993, II.4). */
  private firstStep(direction: number, left: number): number {
    const rate = this.k[0]!;
    const scaled = (v: Float64Array) => {
      let sum = 0;
      for (let i = 0; i < this.size; i++) {
        const q = v[i]! / (this.absolute[i]! + this.relative * Math.abs(this.current[i]!));
        sum += q * q;
      }
      return Math.sqrt(sum / this.size);
    };
    const size0 = scaled(this.current);
    const size1 = scaled(rate);
    const h0 = Math.min(left, size0 < 1e-5 || size1 < 1e-5 ? 1e-6 : (0.01 * size0) / size1);
    for (let i = 0; i < this.size; i++) this.trial[i] = this.current[i]! + direction * h0 * rate[i]!;
    this.evaluate(this.time + direction * h0, this.trial, 1);
    const bend = this.k[1]!;
    for (let i = 0; i < this.size; i++) bend[i] = bend[i]! - rate[i]!;
    const size2 = Math.max(size1, scaled(bend) / h0);
    const h1 = size2 <= 1e-15 ? Math.max(1e-6, h0 * 1e-3) : (0.01 / size2) ** (1 / 8);
    const guess = Math.min(100 * h0, h1, left);
    return guess > 0 ? guess : Math.min(left, 1e-6);
  }

  private prepareDense(): void {
    const h = this.time - this.previousTime;
    for (let s = endRow + 1; s <= lastStage; s++) {
      this.combine(stageRows[s]!, h, this.old, this.trial);
      this.evaluate(this.previousTime + nodes[s]! * h, this.trial, s);
    }
    const start = this.k[0]!;
    const end = this.k[endRow]!;
    for (let i = 0; i < this.size; i++) {
      const rise = this.current[i]! - this.old[i]!;
      this.dense[0]![i] = rise;
      this.dense[1]![i] = h * start[i]! - rise;
      this.dense[2]![i] = 2 * rise - h * (end[i]! + start[i]!);
      for (let d = 0; d < 4; d++) this.dense[3 + d]![i] = h * this.weighted(denseRows[d]!, i);
    }
    this.denseReady = true;
  }
}
