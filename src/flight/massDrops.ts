/** Mass that leaves otherwise than through the engines shows as a fall too large for the flow around it. */

export interface GapDrop {
  /** The drop lies between samples `gap` and `gap + 1`. */
  readonly gap: number;
  /** Without what the engines burnt in the gap, where they burn on both sides of it. */
  readonly mass_kg: number;
}

/**
 * Finds drops in a mass line. `sigma_kg` is the one-sigma error of a sample (noise and rounding together),
 * `step_kg` the rounding step. Samples may be NaN; a gap then reaches to the next finite sample.
 */
export function findMassDrops(
  t: Float64Array,
  mass: Float64Array,
  sigma_kg: number,
  step_kg: number,
): GapDrop[] {
  const rows: number[] = [];
  for (let i = 0; i < mass.length; i++) if (Number.isFinite(mass[i]!)) rows.push(i);
  const drops: GapDrop[] = [];
  for (let k = 0; k + 1 < rows.length; k++) {
    const i = rows[k]!;
    const j = rows[k + 1]!;
    const fall = mass[i]! - mass[j]!;
    const least = Math.max(0.002 * mass[i]!, 3 * step_kg, 8 * sigma_kg);
    if (fall <= least) continue;
    const flow = Math.max(flowBeside(t, mass, rows, k, -1), flowBeside(t, mass, rows, k + 1, 1));
    const burnt = flow * (t[j]! - t[i]!);
    if (fall - 1.6 * burnt <= least) continue;
    const steady = Math.min(fallRate(t, mass, rows, k - 1), fallRate(t, mass, rows, k + 1));
    drops.push({ gap: i, mass_kg: fall - steady * (t[j]! - t[i]!) });
  }
  return drops;
}

/** Fall of the mass from finite sample `k` to the next, kg/s; 0 beyond the ends and where it rises. */
function fallRate(t: Float64Array, mass: Float64Array, rows: readonly number[], k: number): number {
  const a = rows[k];
  const b = rows[k + 1];
  if (a === undefined || b === undefined) return 0;
  return Math.max(0, (mass[a]! - mass[b]!) / (t[b]! - t[a]!));
}

/** Flow in kg/s over a few gaps before (−1) or after (+1) finite sample `k`, without the largest fall there. */
function flowBeside(
  t: Float64Array,
  mass: Float64Array,
  rows: readonly number[],
  k: number,
  side: -1 | 1,
): number {
  const falls: number[] = [];
  let time = 0;
  for (let s = 0; s < 6; s++) {
    const a = rows[side === -1 ? k - s - 1 : k + s];
    const b = rows[side === -1 ? k - s : k + s + 1];
    if (a === undefined || b === undefined) break;
    falls.push((mass[a]! - mass[b]!) / (t[b]! - t[a]!));
    time++;
  }
  if (time < 3) return falls.length ? Math.min(...falls.map((f) => Math.max(f, 0))) : 0;
  falls.sort((p, q) => p - q);
  falls.pop();
  return Math.max(0, falls.reduce((p, q) => p + q, 0) / falls.length);
}
