import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import type { AlongPath } from '../alongPath.ts';
import type { Burn } from '../types.ts';
import { type DragUnknown, type EngineUnknown, hatAt } from './unknowns.ts';

/**
 * The equation of motion along the path in integral form, cumulative from each burn's start (METHODS §3):
 *   |v|(t) + ∫(g·sin γ − cf) dt = |v|₀ + Σ Isp·∫g0·cos α·dln(1/m) − Σ Ae·∫p·cos α/m dt − Σ CdAₖ·∫q·φₖ(M)/m dt
 * so that the log is never differentiated twice.
 */

export interface EquationInput {
  readonly time: Float64Array;
  /** Row of the log at each axis point, −1 where inserted. */
  readonly row: Int32Array;
  /** The speed channel as logged, on rows; NaN = missing. */
  readonly rawSpeed: Float64Array;
  readonly mass: Float64Array;
  readonly pressure: Float64Array;
  readonly dynamicPressure: Float64Array;
  readonly mach: Float64Array;
  readonly along: AlongPath;
  readonly burns: readonly Burn[];
  /** Index of each burn segment's engine. */
  readonly engineOf: readonly (readonly number[])[];
  readonly engines: readonly EngineUnknown[];
  readonly drag: DragUnknown | null;
  readonly loggedDrag: Float64Array | null;
  readonly liftOffIndex: number;
  readonly pitchSigma_rad: number;
  /** One-sigma error of the path's angle while it is gathered from the pitch, rad; NaN elsewhere. */
  readonly riseAngleSigma: Float64Array;
  readonly flightPathAngle: Float64Array;
}

/** The equation's columns, cumulative on the axis, for one burn; all zero at its start. */
export interface BurnEquation {
  readonly burn: number;
  readonly from: number;
  readonly to: number;
  /** One array for each unknown (engines' Isp, engines' area, drag nodes), by axis point from `from`. */
  readonly columns: readonly Float64Array[];
  /** ∫(g·sin γ − cf) dt and logged drag, to be added to the speed. */
  readonly known: Float64Array;
  /** What one sigma of the gathered path angle would add to the gravity integral. */
  readonly rise: Float64Array;
  /** Delta-v that each engine earned by its reference, m/s. */
  readonly earned: Float64Array;
  /** Variance that the pitch's noise puts on the part of it along the velocity, engine by engine, m²/s². */
  readonly misled: Float64Array;
}

/** Index of an unknown among the columns. */
export const columnOf = {
  isp: (engine: number): number => engine,
  area: (engine: number, engines: number): number => engines + engine,
  node: (node: number, engines: number): number => 2 * engines + node,
};

/** Number of columns. */
export function columnCount(engines: number, drag: DragUnknown | null): number {
  return 2 * engines + (drag === null ? 0 : drag.mach.length);
}

/** Gathers the equation of each burn. */
export function burnEquations(input: EquationInput): BurnEquation[] {
  const { time, mass, pressure, along, engines, drag } = input;
  const count = columnCount(engines.length, drag);
  // Zero-mean errors of the pitch shorten cos α by σ²/2 on the mean.
  const lengthen = 1 + input.pitchSigma_rad ** 2 / 2;
  const equations: BurnEquation[] = [];
  input.burns.forEach((burn, b) => {
    const from = Math.max(burn.startIndex, input.liftOffIndex);
    const to = burn.endIndex;
    if (to - from < 3) return;
    const n = to - from + 1;
    const columns = Array.from({ length: count }, () => new Float64Array(n));
    const known = new Float64Array(n);
    const rise = new Float64Array(n);
    const sums = new Float64Array(count);
    const earned = new Float64Array(engines.length);
    const misled = new Float64Array(engines.length);
    let held = 0;
    let s = 0;
    for (let i = from + 1; i <= to; i++) {
      const k = i - 1;
      const dt = time[i]! - time[k]!;
      const mid = (time[i]! + time[k]!) / 2;
      while (s + 1 < burn.segments.length && burn.segments[s]!.end_s <= mid) s++;
      const engine = input.engineOf[b]![s]!;
      const unknown = engines[engine]!;
      const segment = burn.segments[s]!;
      const mean = (mass[i]! + mass[k]!) / 2;
      const push = ((along.push[i]! + along.push[k]!) / 2) * lengthen;
      // What falls within a microsecond is thrown off, not burnt.
      if (dt > 5e-6 && mass[i]! > 0) {
        const isp = segment.isp_s ?? unknown.ispReference_s;
        const gained = STANDARD_GRAVITY_M_S2 * isp * Math.log(mass[k]! / mass[i]!);
        const aside = Math.sqrt(Math.max(0, 1 - push * push));
        sums[columnOf.isp(engine)]! += gained * push;
        earned[engine]! += gained;
        misled[engine]! += (gained * aside * input.pitchSigma_rad) ** 2;
        const area = segment.exitArea_m2 ?? unknown.areaReference_m2;
        sums[columnOf.area(engine, engines.length)]! -=
          ((((pressure[i]! + pressure[k]!) / 2) * Math.max(area, 1e-9)) / mean) * push * dt;
      }
      if (input.loggedDrag !== null) held += ((input.loggedDrag[i]! + input.loggedDrag[k]!) / 2 / mean) * dt;
      else if (drag !== null) {
        const m = (input.mach[i]! + input.mach[k]!) / 2;
        const { node, next } = hatAt(drag.mach, m);
        const q = (input.dynamicPressure[i]! + input.dynamicPressure[k]!) / 2;
        const area = (drag.reference_m2[i]! + drag.reference_m2[k]!) / 2;
        const share = ((q * area) / mean) * dt;
        sums[columnOf.node(node, engines.length)]! -= share * (1 - next);
        if (next > 0) sums[columnOf.node(node + 1, engines.length)]! -= share * next;
      }
      held += ((along.pull[i]! + along.pull[k]!) / 2 - (along.spin[i]! + along.spin[k]!) / 2) * dt;
      known[i - from] = held;
      const angle = input.riseAngleSigma[i]!;
      const gathered = Number.isFinite(angle)
        ? along.gravity[i]! * Math.cos(input.flightPathAngle[i]!) * angle * dt
        : 0;
      rise[i - from] = rise[i - from - 1]! + gathered;
      for (let c = 0; c < count; c++) columns[c]![i - from] = sums[c]!;
    }
    equations.push({ burn: b, from, to, columns, known, rise, earned, misled });
  });
  return equations;
}

/**
 * Rows for the solver: coefficients (columns, one start speed for each burn, the rise's error), responses, weights
 * in them.
 */
export interface Rows {
  readonly cols: number;
  readonly a: number[];
  readonly b: number[];
}

/** Most samples of a burn that go into the solver one by one; longer burns go in as means of neighbours. */
const MOST_ROWS = 1500;

/** One row for each sample of the speed channel inside a burn, divided by its one-sigma error. */
export function speedRows(input: EquationInput, equations: readonly BurnEquation[], sigma_m_s: number): Rows {
  const count = columnCount(input.engines.length, input.drag);
  const cols = count + equations.length + 1;
  const a: number[] = [];
  const b: number[] = [];
  equations.forEach((eq, e) => {
    const points: number[] = [];
    for (let i = eq.from; i <= eq.to; i++) {
      const row = input.row[i]!;
      if (row >= 0 && Number.isFinite(input.rawSpeed[row]!)) points.push(i);
    }
    const group = Math.max(1, Math.ceil(points.length / MOST_ROWS));
    for (let p = 0; p < points.length; p += group) {
      const members = points.slice(p, p + group);
      const weight = Math.sqrt(members.length) / sigma_m_s;
      const row = new Array<number>(cols).fill(0);
      let y = 0;
      for (const i of members) {
        for (let c = 0; c < count; c++) row[c]! += eq.columns[c]![i - eq.from]!;
        y += input.rawSpeed[input.row[i]!]! + eq.known[i - eq.from]!;
      }
      for (let c = 0; c < count; c++) row[c]! *= weight / members.length;
      row[count + e] = weight;
      let rise = 0;
      for (const i of members) rise += eq.rise[i - eq.from]!;
      row[cols - 1] = (-rise * weight) / members.length;
      a.push(...row);
      b.push((y / members.length) * weight);
    }
  });
  return { cols, a, b };
}
