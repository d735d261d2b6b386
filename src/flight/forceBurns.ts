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
  /** From lift-off to the highest point, s; infinite where the log does not show the vehicle come down again. */
  readonly rise_s: number;
}

/** Spacing of the search, s, and half the width over which a slope is taken, in a flight that rises for a minute. */
const GRID_S = 0.25;
const HALF_S = 1.5;
/** A flight that rises for less has burns as much shorter, as far as so many samples in half a width show them. */
const USUAL_RISE_S = 60;
const LEAST_SAMPLES = 5;
/** Above this dynamic pressure drag may be a force to reckon with (CdA/m up to 2·10⁻³ m²/kg). */
const THICK_PA = 500;
/** Least force that is called thrust, m/s², and least jump that is called an engine's. */
const LEAST_FORCE = 1.5;
const LEAST_JUMP = 2.5;
/** Drag area over mass of small rockets without a canopy, m²/kg: their force against the motion up to this may be drag. */
const LIGHT_M2_KG = 0.014;
const SHORTEST_S = 2;
/** Flickers of the evidence shorter than this do not part a burn in two. */
const FLICKER_S = 3.5;
/** Slower than this the vehicle is taken to stand. */
const STILL_M_S = 2;

interface Grid {
  readonly t: Float64Array;
  /** How much shorter all times of the search are than usual, 0 to 1. */
  readonly scale: number;
  /** Force along the path over the two seconds about each time, m/s². */
  readonly force: Float64Array;
  /** Slope of the speed after each time less the slope before it. */
  readonly jump: Float64Array;
  readonly thick: Uint8Array;
  /** 1 where the vehicle stands. */
  readonly still: Uint8Array;
  /** Force against the motion that a small rocket's drag may be, m/s². */
  readonly drag: Float64Array;
  readonly sigma: number;
}

/** Burns, and the instants inside them at which the engines' force changed. */
export interface ForceEvidence {
  readonly burns: readonly RawBurn[];
  readonly throttleSteps: readonly {
    readonly name: 'throttle-down' | 'throttle-up';
    readonly time_s: number;
  }[];
}

/** Finds burns; times in the axis of `motion.t`, whose zero is lift-off. */
export function forceBurns(motion: PathMotion): ForceEvidence {
  const grid = makeGrid(motion, timeScale(motion));
  const n = grid.t.length;
  const lit = new Int8Array(n);
  let state = 0;
  const least = Math.max(LEAST_FORCE, 5 * grid.sigma);
  const leap = Math.max(LEAST_JUMP, 6 * grid.sigma);
  for (let k = 0; k < n; k++) {
    const f = grid.force[k]!;
    if (grid.t[k]! < 0 || grid.still[k] === 1) state = 0;
    else if (grid.thick[k] === 0) state = f > least ? 1 : f < -Math.max(least, grid.drag[k]!) ? -1 : 0;
    else {
      const j = isPeak(grid.jump, k) && isSudden(grid.force, k) ? grid.jump[k]! : 0;
      const after = grid.force[Math.min(n - 1, k + 6)]!;
      if (state === 0 && k * GRID_S < 10 && f > least) state = 1;
      else if (state === 1 && j < -leap && after < least) state = 0;
      else if (state === 0 && j > leap && after > least) state = 1;
      else if (state === 0 && j < -leap && after < -3 * least) state = -1;
      else if (state === -1 && j > leap && after > grid.force[Math.max(0, k - 6)]! + leap) state = 0;
    }
    lit[k] = state;
  }
  const burns = collect(motion, grid, lit);
  return { burns, throttleSteps: stepsInside(grid, burns) };
}

/** How much shorter than usual the flight's times are: by its rise, and not below what its samples show. */
function timeScale({ t, rise_s }: PathMotion): number {
  const step = (t[t.length - 1]! - t[0]!) / Math.max(1, t.length - 1);
  return Math.min(1, Math.max(rise_s / USUAL_RISE_S, (LEAST_SAMPLES * step) / HALF_S));
}

/** Least lasting change of the force inside a burn that is told as a change of throttle, m/s². */
const LEAST_STEP = 3;

function stepsInside(grid: Grid, burns: readonly RawBurn[]): ForceEvidence['throttleSteps'] {
  const change = grid.force.map((_, k) => around(grid.force, k, 9));
  const out: { name: 'throttle-down' | 'throttle-up'; time_s: number }[] = [];
  for (let k = 0; k < change.length; k++) {
    const at = grid.t[k]!;
    const inside = burns.some((b) => at > b.start_s + 6 * grid.scale && at < b.end_s - 6 * grid.scale);
    if (!inside || Math.abs(change[k]!) < Math.max(LEAST_STEP, 8 * grid.sigma)) continue;
    // A change that is gone again after some seconds is a flaw of the speed channel.
    const lasting = Math.abs(around(grid.force, k, 23)) > SUDDEN_SHARE * Math.abs(change[k]!);
    if (!isPeak(change, k) || !isSudden(grid.force, k) || !lasting) continue;
    out.push({ name: change[k]! < 0 ? 'throttle-down' : 'throttle-up', time_s: at });
  }
  return out;
}

/** Change of the force from so many grid points before `k` to as many after it. */
function around(force: Float64Array, k: number, points: number): number {
  const at = (j: number): number => force[Math.max(0, Math.min(force.length - 1, j))]!;
  return at(k + points) - at(k - points);
}

function makeGrid(motion: PathMotion, scale: number): Grid {
  const { t, speed } = motion;
  const first = t[0]!;
  const last = t[t.length - 1]!;
  const n = Math.max(2, Math.min(40000, Math.floor((last - first) / (GRID_S * scale))));
  const half_s = HALF_S * scale;
  const at = Float64Array.from({ length: n }, (_, k) => first + ((k + 0.5) * (last - first)) / n);
  const slope = (shift: number): Float64Array =>
    localPolynomial(
      t,
      speed,
      at.map((x) => Math.min(last, Math.max(first, x + shift))),
      {
        degree: 1,
        window_s: half_s,
        minPoints: 3,
        breaks: [],
      },
    ).rate;
  const before = slope(-half_s / 2);
  const after = slope(half_s / 2);
  const centre = localPolynomial(t, speed, at, {
    degree: 1,
    window_s: 2 * scale,
    minPoints: 3,
    breaks: [],
  }).rate;
  const force = new Float64Array(n);
  const jump = new Float64Array(n);
  const thick = new Uint8Array(n);
  const still = new Uint8Array(n);
  const drag = new Float64Array(n);
  let i = 0;
  for (let k = 0; k < n; k++) {
    while (i + 1 < t.length && t[i + 1]! <= at[k]!) i++;
    force[k] = centre[k]! - motion.coasting[i]!;
    jump[k] = after[k]! - before[k]!;
    drag[k] = scale < 1 ? LIGHT_M2_KG * motion.dynamicPressure[i]! : 0;
    still[k] = at[k]! > 5 * scale && speed[i]! < STILL_M_S ? 1 : 0;
    thick[k] = motion.dynamicPressure[i]! > THICK_PA ? 1 : 0;
  }
  const perSecond = (t.length - 1) / (last - first);
  const window_s = 2 * scale;
  const sigma = (motion.speedSigma_m_s * Math.sqrt(12 / Math.max(3, window_s * perSecond))) / window_s;
  return { t: at, scale, force, jump, thick, still, drag, sigma };
}

/** True where |jump| is the greatest within eight grid points. */
function isPeak(jump: Float64Array, k: number): boolean {
  const reach = 8;
  const size = Math.abs(jump[k]!);
  for (let j = Math.max(0, k - reach); j <= Math.min(jump.length - 1, k + reach); j++) {
    if (Math.abs(jump[j]!) > size) return false;
  }
  return true;
}

/** A cutoff takes this share of the force away at a stroke; a flicker of the evidence does not. */
const CUT_SHARE = 0.4;

/** True where the engines were really cut after lit grid point `e`. */
function isPause(grid: Grid, lit: Int8Array, e: number): boolean {
  const before = Math.abs(grid.force[Math.max(0, e - 8)]!);
  let most = 0;
  for (let j = Math.max(0, e - 6); j <= Math.min(lit.length - 1, e + 6); j++) {
    most = Math.max(most, -lit[e]! * grid.jump[j]!);
  }
  return most > Math.max(2 * LEAST_JUMP, CUT_SHARE * before);
}

/** An engine's change is over within a few seconds; that of drag goes on. */
const SUDDEN_SHARE = 0.7;

function isSudden(force: Float64Array, k: number): boolean {
  return Math.abs(around(force, k, 9)) > SUDDEN_SHARE * Math.abs(around(force, k, 23));
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
    // A burn against the motion can turn into one along it: only a pause ends a burn.
    for (let j = e + 1; j < lit.length && (j - e) * GRID_S <= FLICKER_S; j++) {
      if (lit[j] !== 0 && (j === e + 1 || !isPause(grid, lit, e))) e = j;
    }
    const atStart = k === 0 || grid.t[k - 1]! < 0;
    const atEnd = e === lit.length - 1;
    const start_s = atStart ? Math.max(0, motion.t[0]!) : edgeTime(grid, k, lit[k]!);
    const end_s = atEnd ? motion.t[motion.t.length - 1]! : edgeTime(grid, e + 1, -lit[e]!);
    if (end_s - start_s >= SHORTEST_S * grid.scale) {
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

/** The instant of the greatest jump of the wanted sign about grid point `k`. */
function edgeTime(grid: Grid, k: number, sign: number): number {
  const reach = 10;
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
