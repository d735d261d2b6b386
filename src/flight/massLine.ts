import type { Axis } from './axis.ts';
import type { RawBurn } from './burnEdges.ts';
import type { GapDrop } from './massDrops.ts';
import { filled } from './onAxis.ts';

/** Mass on the flight's axis, with edges of burns and drops where they belong. */
export interface MassLine {
  readonly mass: Float64Array;
  /** Mass thrown off at each drop. */
  readonly dropped_kg: readonly number[];
  /** Mass at the start and end of each burn. */
  readonly start_kg: readonly number[];
  readonly end_kg: readonly number[];
}

/**
 * Lays the logged mass onto the axis. `logged` is the channel on the log's rows (gaps filled), `throttle`
 * likewise or null. Inside a burn noisy samples are replaced by the line that the throttle draws between the
 * burn's edge masses when that line fits them (`sigma_kg` is one sample's error).
 */
export function layMass(
  axis: Axis,
  t: Float64Array,
  logged: Float64Array,
  throttle: Float64Array | null,
  burns: readonly RawBurn[],
  drops: readonly GapDrop[],
  sigma_kg: number,
): MassLine {
  const n = axis.time.length;
  const mass = new Float64Array(n).fill(Number.NaN);
  for (let i = 0; i < n; i++) if (axis.row[i]! >= 0) mass[i] = logged[axis.row[i]!]!;
  const start_kg = burns.map((b) => b.startMass_kg!);
  const end_kg = burns.map((b) => b.endMass_kg!);
  burns.forEach((burn, k) => {
    mass[axis.burnStart[k]!] = start_kg[k]!;
    mass[axis.burnEnd[k]!] = end_kg[k]!;
    if (sigma_kg > 1e-6 * logged[burn.first]!) smoothBurn(axis, t, mass, throttle, burn, k, drops, sigma_kg);
  });
  const dropped_kg = drops.map((drop, k) => {
    const a = axis.dropIndex[k]!;
    const b = a + 1;
    const inside = burns.find((burn) => axis.time[a]! > burn.start_s && axis.time[b]! < burn.end_s);
    if (inside !== undefined) {
      const before = flowAt(axis, mass, a - 1, -1);
      const after = flowAt(axis, mass, b + 1, 1);
      mass[a] = mass[a - 1]! - before * (axis.time[a]! - axis.time[a - 1]!);
      mass[b] = mass[b + 1]! + after * (axis.time[b + 1]! - axis.time[b]!);
    } else {
      mass[a] = a > 0 && Number.isFinite(mass[a - 1]!) ? mass[a - 1]! : mass[b + 1]! + drop.mass_kg;
      mass[b] = b + 1 < n && Number.isFinite(mass[b + 1]!) ? mass[b + 1]! : mass[a]! - drop.mass_kg;
    }
    return mass[a]! - mass[b]!;
  });
  // What is left was inserted for other reasons (time zero): between its neighbours.
  return { mass: filled(axis.time, mass) ?? mass, dropped_kg, start_kg, end_kg };
}

/** Flow beside axis point `i`, looking to one side over up to five points, kg/s. */
function flowAt(axis: Axis, mass: Float64Array, i: number, side: -1 | 1): number {
  let j = i;
  for (let k = 0; k < 5; k++) if (Number.isFinite(mass[j + side] ?? Number.NaN)) j += side;
  const dt = Math.abs(axis.time[j]! - axis.time[i]!);
  return dt > 0 ? Math.abs(mass[j]! - mass[i]!) / dt : 0;
}

function smoothBurn(
  axis: Axis,
  t: Float64Array,
  mass: Float64Array,
  throttle: Float64Array | null,
  burn: RawBurn,
  k: number,
  drops: readonly GapDrop[],
  sigma_kg: number,
): void {
  if (drops.some((d) => t[d.gap]! > burn.start_s && t[d.gap]! < burn.end_s)) return;
  const a = axis.burnStart[k]!;
  const b = axis.burnEnd[k]!;
  const used = new Float64Array(b - a + 1);
  let last = throttle === null ? 1 : throttle[burn.first]!;
  for (let i = a + 1; i <= b; i++) {
    const row = axis.row[i]!;
    const now = throttle === null || row < burn.first || row > burn.last ? last : throttle[row]!;
    used[i - a] = used[i - a - 1]! + ((last + now) / 2) * (axis.time[i]! - axis.time[i - 1]!);
    last = now;
  }
  const total = used[b - a]!;
  if (!(total > 0)) return;
  const line =
    throughSamples(mass, used, a) ?? used.map((u) => mass[a]! + ((mass[b]! - mass[a]!) * u) / total);
  let misfit = 0;
  let count = 0;
  for (let i = a + 1; i < b; i++) {
    const d = mass[i]! - line[i - a]!;
    if (!Number.isFinite(d)) continue;
    misfit += d * d;
    count++;
  }
  if (count > 0 && Math.sqrt(misfit / count) > 3 * sigma_kg) return;
  for (let i = a + 1; i < b; i++) mass[i] = line[i - a]!;
  // An edge outside the log has no plateau of its own: the line stands for it.
  if (burn.startsBeforeLog) mass[a] = line[0]!;
  if (burn.endsAfterLog) mass[b] = line[b - a]!;
}

/** Fewest samples that draw a line by themselves. */
const LINE_SAMPLES = 20;

/** Least-squares mass against throttle-seconds through a burn's samples; null with too few. */
function throughSamples(mass: Float64Array, used: Float64Array, a: number): Float64Array | null {
  let n = 0;
  let su = 0;
  let sm = 0;
  let suu = 0;
  let sum = 0;
  for (let k = 1; k < used.length - 1; k++) {
    const y = mass[a + k]! - mass[a]!;
    if (!Number.isFinite(y)) continue;
    const u = used[k]!;
    n++;
    su += u;
    sm += y;
    suu += u * u;
    sum += u * y;
  }
  const spread = n * suu - su * su;
  if (n < LINE_SAMPLES || !(spread > 0)) return null;
  const slope = (n * sum - su * sm) / spread;
  const base = mass[a]! + (sm - slope * su) / n;
  return used.map((u) => base + slope * u);
}
