import { STANDARD_GRAVITY_M_S2 } from '../../units/standardGravity.ts';
import { columnOf, type EquationInput, type Rows } from './equation.ts';

/** A logged thrust may be off by a common share, one sigma; what it tells of the rest is its course in time. */
export const THRUST_SCALE_SHARE = 0.02;
/** Error of the impulse gathered over a burn besides the mass's, as a share of it: quadrature, the burn's edges. */
const IMPULSE_SHARE = 1e-4;
/** Rows of a burn. */
const MOST_ROWS = 300;

/**
 * What a logged thrust says of the engines, gathered from each burn's start:
 *   ∫T dt = Isp·g0·(m₀ − m) − Ae·∫p dt + ε·∫T dt,
 * divided by the burn's mean mass, so that a row is a speed. The columns are those of the equation of motion, the
 * constants of the burns left out by counting from their mean; the last column is ε. Drag has no part in it, which
 * is what tells the exit area from the drag area.
 */
export function thrustRows(
  input: EquationInput,
  columns: number,
  thrust: Float64Array,
  mass_kg: number,
): Rows {
  const { time, mass, pressure, engines } = input;
  const cols = columns + 1;
  const a: number[] = [];
  const b: number[] = [];
  input.burns.forEach((burn, at) => {
    const points = burn.endIndex - burn.startIndex;
    if (points < 3) return;
    const scale = (mass[burn.startIndex]! + mass[burn.endIndex]!) / 2;
    const stride = Math.max(1, Math.ceil(points / MOST_ROWS));
    const sums = new Float64Array(cols);
    const rows: Float64Array[] = [];
    const responses: number[] = [];
    let impulse = 0;
    let isp = 0;
    let s = 0;
    for (let i = burn.startIndex + 1; i <= burn.endIndex; i++) {
      const dt = time[i]! - time[i - 1]!;
      const mid = (time[i]! + time[i - 1]!) / 2;
      while (s + 1 < burn.segments.length && burn.segments[s]!.end_s <= mid) s++;
      const engine = input.engineOf[at]![s]!;
      const unknown = engines[engine]!;
      isp = burn.segments[s]!.isp_s ?? unknown.ispReference_s;
      const area = burn.segments[s]!.exitArea_m2 ?? unknown.areaReference_m2;
      // What falls within a microsecond is thrown off, not burnt.
      if (dt > 5e-6) {
        sums[columnOf.isp(engine)]! += (STANDARD_GRAVITY_M_S2 * isp * (mass[i - 1]! - mass[i]!)) / scale;
        sums[columnOf.area(engine, engines.length)]! -=
          (((pressure[i]! + pressure[i - 1]!) / 2) * Math.max(area, 1e-9) * dt) / scale;
        impulse += (((thrust[i]! + thrust[i - 1]!) / 2) * dt) / scale;
      }
      if ((i - burn.startIndex) % stride !== 0 || !Number.isFinite(impulse)) continue;
      sums[cols - 1] = impulse;
      rows.push(Float64Array.from(sums));
      responses.push(impulse);
    }
    const n = rows.length;
    if (n < 5) return;
    const sigma = Math.hypot((STANDARD_GRAVITY_M_S2 * isp * mass_kg) / scale, IMPULSE_SHARE * impulse, 0.01);
    const middle = new Float64Array(cols);
    for (const row of rows) for (let c = 0; c < cols; c++) middle[c]! += row[c]! / n;
    const mean = responses.reduce((sum, y) => sum + y, 0) / n;
    // Neighbours share the mass's rounding and the edges' error: they count as one in ten.
    const weight = 1 / (sigma * Math.sqrt(10));
    for (let k = 0; k < n; k++) {
      for (let c = 0; c < cols; c++) a.push((rows[k]![c]! - middle[c]!) * weight);
      b.push((responses[k]! - mean) * weight);
    }
  });
  return { cols, a, b };
}
