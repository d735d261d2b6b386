import {
  type BurnEquation,
  burnEquations,
  columnCount,
  columnOf,
  type EquationInput,
  speedRows,
} from './equation.ts';
import { type Reduced, reduce, solveReduced } from './leastSquares.ts';
import { misledBy } from './misled.ts';
import { nonNegative } from './nonNegative.ts';
import { THRUST_SCALE_SHARE, thrustRows } from './thrustRows.ts';
import { type DragUnknown, type EngineUnknown, hatAt } from './unknowns.ts';

/** Thrust as logged, on the axis, and the one-sigma error of the mass that it is held against. */
export interface LoggedThrust {
  readonly thrust_N: Float64Array;
  readonly massSigma_kg: number;
}

/** Values of the vehicle as the log shows them, with the one-sigma errors and what joins them. */
export interface VehicleFit {
  readonly engines: readonly EngineUnknown[];
  readonly drag: DragUnknown | null;
  /** Engine of each burn's segments. */
  readonly engineOf: readonly (readonly number[])[];
  /** Factors on the references: engines' Isp, engines' exit area, drag nodes. */
  readonly factors: Float64Array;
  /** Their covariance from the speed's noise and the priors, row by row. */
  readonly covariance: Float64Array;
  /** Variance of each from the pitch's noise, which the equation's coefficients carry. */
  readonly misled: Float64Array;
  /** One-sigma errors that the priors alone would leave. */
  readonly priorSigma: Float64Array;
  /** Speed as logged less speed by the equation of motion on the axis, m/s; NaN outside burns. */
  readonly residual: Float64Array;
  /** By how much the residuals' slow waves exceed white noise; it is in the covariance. */
  readonly inflation: number;
  /** Root mean square of the residual, m/s. */
  readonly rms_m_s: number;
  /** The same with every value as the card has it; NaN where the card lacks one. */
  readonly cardRms_m_s: number;
  /** Largest speed over a burn that the card's values leave unexplained, m/s; NaN where the card lacks one. */
  readonly cardMiss_m_s: number;
}

/** Waves that quadrature, smoother and hat functions leave even in a clean log: their size, m/s, and length. */
const MODEL_SIGMA_M_S = 0.03;
const MODEL_WAVE_S = 20;
/** How well speed and gathered gravity are known when the rise is over: on a clean log, and on a noisy one. */
const REST_SIGMA_M_S = 0.05;
const NOISY_REST_SIGMA_M_S = 0.3;

/**
 * Fits the equation of motion to the speed channel with the references as priors. Null where no burn has samples
 * enough.
 * @param speedSigma_m_s one-sigma error of a speed sample
 * @param fromRest true when the first burn begins with the vehicle at rest
 * @param thrust what the log says of thrust by itself; null where it does not
 */
export function identifyVehicle(
  input: EquationInput,
  speedSigma_m_s: number,
  fromRest: boolean,
  thrust: LoggedThrust | null,
): VehicleFit | null {
  const equations = burnEquations(input);
  if (equations.length === 0) return null;
  const sigma = Math.hypot(speedSigma_m_s, MODEL_SIGMA_M_S * Math.sqrt(MODEL_WAVE_S / meanStep_s(input)));
  const { engines, drag } = input;
  const count = columnCount(engines.length, drag);
  const speeds = speedRows(input, equations, sigma);
  const speedPart = reduce(speeds.cols, Float64Array.from(speeds.a), Float64Array.from(speeds.b));
  const rest = fromRest
    ? Math.hypot(REST_SIGMA_M_S, NOISY_REST_SIGMA_M_S * Math.min(1, speedSigma_m_s))
    : null;
  const force =
    thrust === null ? null : thrustRows(input, count, thrust.thrust_N, Math.max(thrust.massSigma_kg, 1e-3));
  const forcePart =
    force === null || force.b.length < force.cols
      ? null
      : reduce(force.cols, Float64Array.from(force.a), Float64Array.from(force.b));
  const solveWith = (inflation: number) => solve(speedPart, 1 / Math.sqrt(inflation), input, rest, forcePart);
  // The slow waves of the residual say how far its samples are from independent.
  let solved = solveWith(1);
  let waves = residuals(input, equations, solved.x);
  const inflation = inflationOf(input, equations, waves, sigma);
  if (inflation > 1.2) {
    solved = solveWith(inflation);
    waves = residuals(input, equations, solved.x);
  }
  const covariance = new Float64Array(count * count);
  const n = solved.cols;
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) covariance[i * count + j] = solved.inverseNormal[i * n + j]!;
  const card = cardMiss(input, equations, speedPart, sigma);
  return {
    engines,
    drag,
    engineOf: input.engineOf,
    factors: solved.x.slice(0, count),
    covariance,
    misled: misledBy(equations, engines.length, count),
    priorSigma: priorSigmas(engines, drag),
    residual: waves,
    inflation,
    rms_m_s: rmsOf(waves),
    cardRms_m_s: card.rms,
    cardMiss_m_s: card.miss,
  };
}

/** One-sigma error of the factor in column `c`, from all that the fit leans on. */
export function factorSigma({ covariance, misled }: VehicleFit, c: number): number {
  return Math.sqrt(Math.max(0, covariance[c * misled.length + c]! + misled[c]!));
}

/** Mean time between the speed channel's samples, s. */
function meanStep_s(input: EquationInput): number {
  const { time, rawSpeed } = input;
  let n = 0;
  for (const v of rawSpeed) if (Number.isFinite(v)) n++;
  return Math.min(MODEL_WAVE_S, (time[time.length - 1]! - time[0]!) / Math.max(1, n - 1));
}

interface Solved {
  readonly cols: number;
  readonly x: Float64Array;
  readonly inverseNormal: Float64Array;
}

/** Speed rows (already reduced) and prior rows together; factors are kept from going negative. */
function solve(
  speed: Reduced,
  weight: number,
  input: EquationInput,
  restSigma_m_s: number | null,
  force: Reduced | null,
): Solved {
  const { engines, drag } = input;
  const count = columnCount(engines.length, drag);
  // Behind the start speeds stand the drag curve's common factor and the logged thrust's common error.
  const common = speed.cols;
  const scale = speed.cols + (drag === null ? 0 : 1);
  const cols = scale + (force === null ? 0 : 1);
  const a: number[] = [];
  const b: number[] = [];
  const put = (entries: readonly (readonly [number, number])[], y: number): void => {
    const row = new Array<number>(cols).fill(0);
    for (const [k, value] of entries) row[k] = value;
    a.push(...row);
    b.push(y);
  };
  for (let i = 0; i < speed.cols; i++) {
    const row: [number, number][] = [];
    for (let j = i; j < speed.cols; j++) row.push([j, speed.r[i * speed.cols + j]! * weight]);
    put(row, speed.c[i]! * weight);
  }
  if (force !== null) {
    for (let i = 0; i < force.cols; i++) {
      const row: [number, number][] = [];
      for (let j = i; j < force.cols; j++) row.push([j < count ? j : scale, force.r[i * force.cols + j]!]);
      put(row, force.c[i]!);
    }
    put([[scale, 1 / THRUST_SCALE_SHARE]], 0);
  }
  engines.forEach((engine, e) => {
    put([[columnOf.isp(e), 1 / engine.ispShare]], 1 / engine.ispShare);
    put([[columnOf.area(e, engines.length), 1 / engine.areaShare]], 1 / engine.areaShare);
  });
  if (drag !== null) {
    put([[common, 1 / drag.commonShare]], 1 / drag.commonShare);
    drag.mach.forEach((_, k) => {
      put(
        [
          [columnOf.node(k, engines.length), 1 / drag.nodeShare],
          [common, -1 / drag.nodeShare],
        ],
        0,
      );
    });
  }
  // The error of the gathered path angle is one draw of its sigma.
  put([[speed.cols - 1, 1]], 0);
  if (restSigma_m_s !== null) put([[count, 1 / restSigma_m_s]], 0);
  const problem = reduce(cols, Float64Array.from(a), Float64Array.from(b));
  const free = Array.from(
    { length: cols },
    (_, k) => (k >= count && k < speed.cols) || (force !== null && k === scale),
  );
  return { cols, x: nonNegative(problem, free), inverseNormal: solveReduced(problem).inverseNormal };
}

/** Logged speed less the equation's, on the axis; NaN where there is no sample in a burn. */
function residuals(input: EquationInput, equations: readonly BurnEquation[], x: Float64Array): Float64Array {
  const out = new Float64Array(input.time.length).fill(Number.NaN);
  const count = columnCount(input.engines.length, input.drag);
  equations.forEach((eq, e) => {
    for (let i = eq.from; i <= eq.to; i++) {
      const row = input.row[i]!;
      if (row < 0) continue;
      let miss = input.rawSpeed[row]! + eq.known[i - eq.from]! - x[count + e]!;
      miss += eq.rise[i - eq.from]! * x[count + equations.length]!;
      for (let c = 0; c < count; c++) miss -= eq.columns[c]![i - eq.from]! * x[c]!;
      out[i] = miss;
    }
  });
  return out;
}

/** Width of the means whose scatter is compared with that of single samples. */
const WAVE_SAMPLES = 20;

/** Variance of block means against white noise of one-sigma `sigma`, at least 1. */
function inflationOf(
  input: EquationInput,
  equations: readonly BurnEquation[],
  residual: Float64Array,
  sigma: number,
): number {
  let squares = 0;
  let blocks = 0;
  for (const eq of equations) {
    let sum = 0;
    let n = 0;
    for (let i = eq.from; i <= eq.to; i++) {
      const r = residual[i]!;
      if (input.row[i]! < 0 || !Number.isFinite(r)) continue;
      sum += r;
      n++;
      if (n < WAVE_SAMPLES) continue;
      squares += (sum * sum) / n;
      blocks++;
      sum = 0;
      n = 0;
    }
  }
  return blocks < 5 ? 1 : Math.max(1, squares / blocks / (sigma * sigma));
}

function rmsOf(values: Float64Array): number {
  let sum = 0;
  let n = 0;
  for (const v of values) {
    if (!Number.isFinite(v)) continue;
    sum += v * v;
    n++;
  }
  return n === 0 ? Number.NaN : Math.sqrt(sum / n);
}

/** How far the card's own values, start speeds free, miss the log. */
function cardMiss(
  input: EquationInput,
  equations: readonly BurnEquation[],
  speed: Reduced,
  sigma: number,
): { rms: number; miss: number } {
  const { engines, drag } = input;
  const whole = engines.every((e) => e.ispOnCard && e.areaOnCard) && (drag === null || drag.onCard);
  if (!whole) return { rms: Number.NaN, miss: Number.NaN };
  const count = columnCount(engines.length, drag);
  const x = new Float64Array(speed.cols).fill(1);
  // Start speeds: the mean miss of each burn's first second.
  x.fill(0, count);
  const first = residuals(input, equations, x);
  equations.forEach((eq, e) => {
    let sum = 0;
    let n = 0;
    for (let i = eq.from; i <= eq.to && (input.time[i]! - input.time[eq.from]! < 5 || n < 5); i++) {
      if (!Number.isFinite(first[i]!)) continue;
      sum += first[i]!;
      n++;
    }
    x[count + e] = n === 0 ? 0 : sum / n;
  });
  const waves = residuals(input, equations, x);
  let miss = 0;
  for (const eq of equations) {
    let sum = 0;
    let n = 0;
    for (let i = eq.to; i >= eq.from && (input.time[eq.to]! - input.time[i]! < 5 || n < 5); i--) {
      if (!Number.isFinite(waves[i]!)) continue;
      sum += waves[i]!;
      n++;
    }
    if (n > 0) miss += Math.max(0, Math.abs(sum / n) - (2 * sigma) / Math.sqrt(n));
  }
  return { rms: rmsOf(waves), miss };
}

function priorSigmas(engines: readonly EngineUnknown[], drag: DragUnknown | null): Float64Array {
  const nodes = drag === null ? [] : drag.mach.map(() => Math.hypot(drag.commonShare, drag.nodeShare));
  return Float64Array.from([...engines.map((e) => e.ispShare), ...engines.map((e) => e.areaShare), ...nodes]);
}

/** Drag area by the fit at each axis point, m². */
export function fittedDragArea(fit: VehicleFit, mach: Float64Array): Float64Array | null {
  const { drag, engines } = fit;
  if (drag === null) return null;
  return mach.map((m, i) => {
    const { node, next } = hatAt(drag.mach, m);
    const here = fit.factors[columnOf.node(node, engines.length)]!;
    const after = next > 0 ? fit.factors[columnOf.node(node + 1, engines.length)]! : here;
    return drag.reference_m2[i]! * (here + next * (after - here));
  });
}
