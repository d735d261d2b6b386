import { coasted } from '../orbit/coasted.ts';
import type { World } from '../world/types.ts';
import { leastSquares } from './identify/leastSquares.ts';
import type { Samples } from './steps.ts';

/**
 * What a thrust-free stretch above the air tells about its own beginning: energy is kept, and the altitude follows
 * a parabola but for what gravity changes on the way. A noisy log's state at cutoff comes from the whole coast instead of a few samples beside it.
 */

export interface Coast {
  readonly start_s: number;
  readonly end_s: number;
}

/** Longest stretch that one parabola stands for. */
const LONGEST_S = 40;
const FEWEST = 12;
/** Dynamic pressure below which drag over the stretch is less than any speed channel shows, Pa. */
export const NO_DRAG_PA = 0.5;

/** The part of a coast that is fitted. */
export function coastPart(coast: Coast): Coast {
  return { start_s: coast.start_s, end_s: Math.min(coast.end_s, coast.start_s + LONGEST_S) };
}

/**
 * Speeds over the ground on the points `from` … `to` of the axis, by v²/2 − μ/r − (ωr·cos φ)²/2 = constant (Jacobi's
 * integral), from the raw samples in the same stretch. Null where they do not keep it within their noise.
 * @param latitude φ, rad, and `radius` on the axis
 */
export function coastSpeeds(
  world: World,
  latitude: Float64Array,
  time: Float64Array,
  radius: Float64Array,
  from: number,
  to: number,
  raw: Samples,
  sigma_m_s: number,
): { speeds: Float64Array; count: number } | null {
  const potential = (i: number): number =>
    -world.mu_m3_s2 / radius[i]! - (world.spin_rad_s * radius[i]! * Math.cos(latitude[i]!)) ** 2 / 2;
  const start = potential(from);
  const speeds: number[] = [];
  let i = from;
  for (let k = 0; k < raw.t.length; k++) {
    const at = raw.t[k]!;
    if (at <= time[from]! || at > time[to]!) continue;
    while (i < to && time[i]! < at) i++;
    const squared = raw.y[k]! ** 2 + 2 * (potential(i) - start);
    if (squared > 0) speeds.push(Math.sqrt(squared));
  }
  if (speeds.length < FEWEST) return null;
  const mean = speeds.reduce((a, b) => a + b, 0) / speeds.length;
  const half = speeds.length >> 1;
  const early = speeds.slice(0, half).reduce((a, b) => a + b, 0) / half;
  const late = speeds.slice(half).reduce((a, b) => a + b, 0) / (speeds.length - half);
  // A display that lags, or air, would make the halves differ by more than noise can.
  if (Math.abs(late - early) > (4 * sigma_m_s) / Math.sqrt(half)) return null;
  const out = new Float64Array(to - from + 1);
  for (let k = from; k <= to; k++)
    out[k - from] = Math.sqrt(Math.max(0, mean * mean - 2 * (potential(k) - start)));
  return { speeds: out, count: speeds.length };
}

/**
 * Altitude and its rate on the points `from` … `to` by one parabola through the stretch's samples and what a free fall
 * from its start departs from it (gravity falls off with height); null with too few.
 */
export function coastAltitude(
  world: World,
  time: Float64Array,
  from: number,
  to: number,
  raw: Samples,
  fewest: number = FEWEST,
): { altitude: Float64Array; rate: Float64Array; rateSigma: number; count: number } | null {
  const t0 = time[from]!;
  const span = time[to]! - t0;
  const rows: number[] = [];
  for (let k = 0; k < raw.t.length; k++) if (raw.t[k]! > t0 && raw.t[k]! <= time[to]!) rows.push(k);
  if (rows.length < fewest) return null;
  const base = raw.y[rows[0]!]!;
  const a = Float64Array.from(
    rows.flatMap((k) => [1, (raw.t[k]! - t0) / span, ((raw.t[k]! - t0) / span) ** 2]),
  );
  const plain = Float64Array.from(rows, (k) => raw.y[k]! - base);
  let bend = departure(world, base, span, leastSquares(3, a, plain).x);
  const unbent = () =>
    leastSquares(
      3,
      a,
      plain.map((y, i) => y - bend(raw.t[rows[i]!]! - t0).height_m),
    );
  // A parabola alone takes a little of the bend for acceleration: the second one is free of it.
  bend = departure(world, base, span, unbent().x);
  const { x, residualSquares, inverseNormal } = unbent();
  const n = to - from + 1;
  const altitude = new Float64Array(n);
  const rate = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    const s = (time[from + k]! - t0) / span;
    const { height_m, rate_m_s } = bend(time[from + k]! - t0);
    altitude[k] = base + x[0]! + x[1]! * s + x[2]! * s * s + height_m;
    rate[k] = (x[1]! + 2 * x[2]! * s) / span + rate_m_s;
  }
  const rateSigma = Math.sqrt((residualSquares / (rows.length - 3)) * inverseNormal[4]!) / span;
  return { altitude, rate, rateSigma, count: rows.length };
}

/** What a free fall with a parabola's own start, rate and acceleration departs from it, at a time after the start. */
function departure(
  world: World,
  base_m: number,
  span_s: number,
  x: Float64Array,
): (t: number) => { height_m: number; rate_m_s: number } {
  const radius_m = world.radius_m + base_m + x[0]!;
  const radialSpeed_m_s = x[1]! / span_s;
  const bent = (2 * x[2]!) / span_s ** 2;
  // The acceleration is that of gravity less what the motion across takes of it: V_h²/r.
  const tangentialSpeed_m_s = Math.sqrt(Math.max(0, radius_m * (bent + world.mu_m3_s2 / radius_m ** 2)));
  const fall = tangentialSpeed_m_s ** 2 / radius_m - world.mu_m3_s2 / radius_m ** 2;
  return (t) => {
    const at = coasted(world.mu_m3_s2, { radius_m, radialSpeed_m_s, tangentialSpeed_m_s }, t);
    return {
      height_m: at.radius_m - radius_m - radialSpeed_m_s * t - (fall * t * t) / 2,
      rate_m_s: at.radialSpeed_m_s - radialSpeed_m_s - fall * t,
    };
  };
}
