import type { RawBurn } from './burnEdges.ts';
import { localPolynomial } from './localPolynomial.ts';

/**
 * Burns of a log that has no throttle, thrust or mass, from what the path itself shows: the force along it that
 * is neither gravity nor the world's turning. In thin air any such force is thrust; in thick air drag is one
 * too, but drag comes and goes slowly and engines do not, so there only jumps of the acceleration count.
 */
export interface PathMotion {
  readonly t: Float64Array;
  /** Speed samples (finite) and what gravity and rotation do along the path at each time, m/s². */
  readonly speed: Float64Array;
  /** Acceleration along the path that a coasting vehicle without drag would have, m/s². */
  readonly coasting: Float64Array;
  readonly dynamicPressure: Float64Array;
  readonly speedSigma_m_s: number;
}

/** Spacing of the search, s, and half the width over which a slope is taken. */
const GRID_S = 0.25;
const HALF_S = 1.5;
/** Above this dynamic pressure drag may be a force to reckon with (CdA/m up to 2·10⁻³ m²/kg). */
const THICK_PA = 500;
/** Least force that is called thrust, m/s², and least jump that is called an engine's. */
const LEAST_FORCE = 1;
const LEAST_JUMP = 2.5;
const SHORTEST_S = 2;

interface Grid {
  readonly t: Float64Array;
  /** Force along the path over the two seconds about each time, m/s². */
  readonly force: Float64Array;
  /** Slope of the speed after each time less the slope before it. */
  readonly jump: Float64Array;
  readonly thick: Uint8Array;
  readonly sigma: number;
}

/** Finds burns; times in the axis of `motion.t`, whose zero is lift-off. */
export function forceBurns(motion: PathMotion): RawBurn[] {
  const grid = makeGrid(motion);
  const n = grid.t.length;
  const lit = new Int8Array(n);
  let state = 0;
  const least = Math.max(LEAST_FORCE, 5 * grid.sigma);
  const leap = Math.max(LEAST_JUMP, 6 * grid.sigma);
  for (let k = 0; k < n; k++) {
    const f = grid.force[k]!;
    if (grid.t[k]! < 0) state = 0;
    else if (grid.thick[k] === 0) state = f > least ? 1 : f < -least ? -1 : 0;
    else {
      const j = isPeak(grid.jump, k) ? grid.jump[k]! : 0;
      const after = grid.force[Math.min(n - 1, k + 6)]!;
      if (state === 0 && k * GRID_S < 10 && f > least) state = 1;
      else if (state === 1 && j < -leap && after < least) state = 0;
      else if (state === 0 && j > leap && after > least) state = 1;
      else if (state === 0 && j < -leap && after < -3 * least) state = -1;
      else if (state === -1 && j > leap && after > grid.force[Math.max(0, k - 6)]! + leap) state = 0;
    }
    lit[k] = state;
  }
  return collect(motion, grid, lit);
}

function makeGrid(motion: PathMotion): Grid {
  const { t, speed } = motion;
  const first = t[0]!;
  const last = t[t.length - 1]!;
  const n = Math.max(2, Math.min(40000, Math.floor((last - first) / GRID_S)));
  const at = Float64Array.from({ length: n }, (_, k) => first + ((k + 0.5) * (last - first)) / n);
  const slope = (shift: number): Float64Array =>
    localPolynomial(
      t,
      speed,
      at.map((x) => Math.min(last, Math.max(first, x + shift))),
      {
        degree: 1,
        window_s: HALF_S,
        minPoints: 3,
        breaks: [],
      },
    ).rate;
  const before = slope(-HALF_S / 2);
  const after = slope(HALF_S / 2);
  const centre = localPolynomial(t, speed, at, { degree: 1, window_s: 2, minPoints: 3, breaks: [] }).rate;
  const force = new Float64Array(n);
  const jump = new Float64Array(n);
  const thick = new Uint8Array(n);
  let i = 0;
  for (let k = 0; k < n; k++) {
    while (i + 1 < t.length && t[i + 1]! <= at[k]!) i++;
    force[k] = centre[k]! - motion.coasting[i]!;
    jump[k] = after[k]! - before[k]!;
    thick[k] = motion.dynamicPressure[i]! > THICK_PA ? 1 : 0;
  }
  const perSecond = (t.length - 1) / (last - first);
  const sigma = (motion.speedSigma_m_s * Math.sqrt(12 / Math.max(3, 2 * perSecond))) / 2;
  return { t: at, force, jump, thick, sigma };
}

/** True where |jump| is the greatest within two seconds. */
function isPeak(jump: Float64Array, k: number): boolean {
  const reach = Math.round(2 / GRID_S);
  const size = Math.abs(jump[k]!);
  for (let j = Math.max(0, k - reach); j <= Math.min(jump.length - 1, k + reach); j++) {
    if (Math.abs(jump[j]!) > size) return false;
  }
  return true;
}

function collect(motion: PathMotion, grid: Grid, lit: Int8Array): RawBurn[] {
  const burns: RawBurn[] = [];
  let k = 0;
  while (k < lit.length) {
    if (lit[k] === 0) {
      k++;
      continue;
    }
    let e = k;
    while (e + 1 < lit.length && lit[e + 1] === lit[k]) e++;
    const sign = lit[k]!;
    const atStart = k === 0 || grid.t[k - 1]! < 0;
    const atEnd = e === lit.length - 1;
    const start_s = atStart ? Math.max(0, motion.t[0]!) : edgeTime(grid, k, sign);
    const end_s = atEnd ? motion.t[motion.t.length - 1]! : edgeTime(grid, e + 1, -sign);
    if (end_s - start_s >= SHORTEST_S) {
      const first = firstAtOrAfter(motion.t, start_s);
      const last = Math.max(first, firstAtOrAfter(motion.t, end_s) - (atEnd ? 0 : 1));
      burns.push({
        first,
        last,
        start_s,
        end_s,
        startMass_kg: null,
        endMass_kg: null,
        startsBeforeLog: atStart && motion.t[0]! >= 0,
        endsAfterLog: atEnd,
      });
    }
    k = e + 1;
  }
  return burns;
}

/** The instant of the greatest jump of the wanted sign within four seconds of grid point `k`. */
function edgeTime(grid: Grid, k: number, sign: number): number {
  const reach = Math.round(4 / GRID_S);
  let best = Math.min(grid.t.length - 1, k);
  for (let j = Math.max(0, k - reach); j <= Math.min(grid.t.length - 1, k + reach); j++) {
    if (grid.jump[j]! * sign > grid.jump[best]! * sign) best = j;
  }
  return grid.t[best]!;
}

function firstAtOrAfter(t: Float64Array, at: number): number {
  let low = 0;
  let high = t.length - 1;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (t[mid]! < at) low = mid + 1;
    else high = mid;
  }
  return low;
}
