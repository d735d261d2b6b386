import { findUnit, type Unit } from '../units/units.ts';
import { courseOf } from './course.ts';
import { everyRow } from './everyRow.ts';
import { openingValue } from './opening.ts';
import { largestMagnitude, median, quantile } from './statistics.ts';

/** Units of time, altitude and speed that explain the motion together. */
export interface MotionUnits {
  readonly time: Unit;
  readonly altitude: Unit;
  readonly speed: Unit;
  /** 0 to 1, from the distance to the next best explanation. */
  readonly confidence: number;
  /** One clause: which evidence decided. */
  readonly reason: string;
}

/** A channel as written, with its unit where that is known. */
export interface WrittenChannel {
  readonly values: Float64Array;
  readonly unit: Unit | null;
}

type Candidate = readonly [spelling: string, prior: number];

// How often each unit is met in logs that do not name theirs; only their order matters, the evidence decides.
const candidates = {
  time: [
    ['s', 1],
    ['ms', 0.4],
    ['µs', 0.1],
    ['min', 0.03],
    ['h', 0.01],
    // Spreadsheets count days.
    ['d', 0.01],
  ],
  length: [
    ['m', 1],
    ['km', 0.5],
    ['ft', 0.3],
    ['mi', 0.05],
    ['nmi', 0.02],
  ],
  speed: [
    ['m/s', 1],
    ['km/h', 0.3],
    ['ft/s', 0.2],
    ['mph', 0.1],
    ['km/s', 0.2],
    ['kn', 0.05],
  ],
} as const satisfies Record<string, readonly Candidate[]>;

/**
 * Finds the units that a log does not write. Altitude cannot change faster than the vehicle moves, and a launch
 * begins straight up, so the largest ratio of altitude gained to distance flown is near one; speeds,
 * accelerations and durations must be those of a rocket. Times must rise.
 */
export function motionUnits(
  time: WrittenChannel,
  altitude: WrittenChannel,
  speed: WrittenChannel,
): MotionUnits {
  const rise = riseRatio(time.values, altitude.values, speed.values);
  const startsSlow = Math.abs(openingValue(time.values, speed.values)) < 0.05 * quantile(speed.values, 0.99);
  const fastest = quantile(speed.values, 0.99);
  const jerkiness = quantile(rates(time.values, speed.values), 0.95);
  const span = (time.values.at(-1) ?? 0) - (time.values[0] ?? 0);
  const highest = largestMagnitude(altitude.values);
  const fall = freeFall(altitude.values, speed.values);
  const scored = options(time.unit, 'time', candidates.time).flatMap((t) =>
    options(altitude.unit, 'length', candidates.length).flatMap((h) =>
      options(speed.unit, 'speed', candidates.speed).map((v) => ({
        t: t.unit,
        h: h.unit,
        v: v.unit,
        score:
          t.score +
          h.score +
          v.score -
          (isMetric(h.unit) === isMetric(v.unit) ? 0 : MIXED_SYSTEMS) -
          unlikelyRise((rise * h.unit.factor) / (v.unit.factor * t.unit.factor), startsSlow) -
          outside(fastest * v.unit.factor, 30, 12_000, 0.3) -
          outside((jerkiness * v.unit.factor) / t.unit.factor, startsSlow ? 2 : 0, 250, 0.3) -
          unlikelyGravity((fall * v.unit.factor ** 2) / h.unit.factor) -
          outside(span * t.unit.factor, 10, 1e6, 0.5) -
          outside(highest * h.unit.factor, lowestTop_m(fastest * v.unit.factor), 5e8, 0.5),
      })),
    ),
  );
  scored.sort((a, b) => b.score - a.score);
  const best = scored[0];
  if (best === undefined) throw new RangeError('no units to choose from');
  const second = scored.find((other) => other !== best);
  const lead = second === undefined ? 10 : best.score - second.score;
  const ratio = (rise * best.h.factor) / (best.v.factor * best.t.factor);
  return {
    time: best.t,
    altitude: best.h,
    speed: best.v,
    confidence: Math.min(0.97, 1 / (1 + Math.exp(-lead))),
    reason: Number.isFinite(ratio)
      ? `${Number.isFinite(fall) ? `its coasts fall at ${((fall * best.v.factor ** 2) / best.h.factor).toPrecision(2)} m/s², and ` : ''}with altitude in ${best.h.spelling}, speed in ${best.v.spelling} and time in ${best.t.spelling} the steepest climb is ${(100 * ratio).toFixed(0)} % of the distance flown`
      : `the values fit a rocket in ${best.h.spelling} and ${best.v.spelling}`,
  };
}

function options(
  known: Unit | null,
  quantity: 'time' | 'length' | 'speed',
  list: readonly Candidate[],
): { unit: Unit; score: number }[] {
  if (known !== null) return [{ unit: known, score: 0 }];
  return list.flatMap(([spelling, prior]) => {
    const unit = findUnit(quantity, spelling);
    return unit === null ? [] : [{ unit, score: Math.log(prior) }];
  });
}

/** Shares of the samples that windows are long: the straight rise is a small part of a long flight. */
const WINDOW_SHARES = [0.02, 0.05, 0.1];

/** Steepest climb as a share of the distance flown, in the units as written: 0.9 quantile over windows. */
export function riseRatio(t: Float64Array, h: Float64Array, v: Float64Array): number {
  const rows = rowsOfAll(t, h, v);
  const windows = WINDOW_SHARES.flatMap((share) => {
    const width = Math.max(4, Math.floor(rows.length * share));
    const hop = Math.max(1, Math.floor(width / 4));
    const count = Math.max(0, Math.ceil((rows.length - width) / hop));
    return Array.from({ length: count }, (_, k) => ({ from: k * hop, to: k * hop + width }));
  });
  const ends = [...new Set(windows.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const flown = new Map<number, number>();
  let path = 0;
  let least = Number.POSITIVE_INFINITY;
  let k = 1;
  for (const end of [...ends, rows.length - 1]) {
    for (; k <= end; k++) {
      const [a, b] = [rows[k - 1]!, rows[k]!];
      const dt = t[b]! - t[a]!;
      if (dt > 0) path += (dt * (Math.abs(v[a]!) + Math.abs(v[b]!))) / 2;
      const d = Math.abs(h[b]! - h[a]!);
      if (d > 0 && d < least) least = d;
    }
    flown.set(end, path);
  }
  if (!(path > 0)) return Number.NaN;
  const step = Number.isFinite(least) ? least : 0;
  const ratios: number[] = [];
  for (const { from, to } of windows) {
    const along = flown.get(to)! - flown.get(from)!;
    const up = Math.abs(h[rows[to]!]! - h[rows[from]!]!);
    if (along > 1e-4 * path && up >= 5 * step) ratios.push(up / along);
  }
  return quantile(ratios, 0.9);
}

/** Rows in which all three columns hold a number. */
function rowsOfAll(a: Float64Array, b: Float64Array, c: Float64Array): Int32Array {
  if ([a, b, c].every((column) => courseOf(column).whole)) return everyRow(a.length);
  const rows = new Int32Array(a.length);
  let count = 0;
  for (let i = 0; i < rows.length; i++) if (Number.isFinite(a[i]! + b[i]! + c[i]!)) rows[count++] = i;
  return rows.subarray(0, count);
}

/** Rates of change over some tenths of the samples' spacing, magnitudes. */
function rates(t: Float64Array, v: Float64Array): number[] {
  const width = Math.max(2, Math.floor(t.length / 100));
  const found: number[] = [];
  for (let i = 0; i + width < t.length; i += Math.max(1, width >> 1)) {
    const dt = t[i + width]! - t[i]!;
    if (dt > 0) found.push(Math.abs(v[i + width]! - v[i]!) / dt);
  }
  return found;
}

/** The least height that a flight reaches: nothing flies at thousands of m/s near the ground. */
function lowestTop_m(fastest_m_s: number): number {
  return fastest_m_s > 2500 ? 20_000 : 100;
}

/** Metres with miles per hour are rarely written side by side. */
const MIXED_SYSTEMS = 1.5;

function isMetric(unit: Unit): boolean {
  return ['m', 'km', 'm/s', 'km/s', 'km/h'].includes(unit.spelling);
}

/** A climb beyond the distance flown is impossible; one far below it is unusual, the more so from a standstill. */
function unlikelyRise(ratio: number, startsSlow: boolean): number {
  if (!(ratio > 0)) return 0;
  if (ratio > 1.1) return (Math.log(ratio / 1.1) / 0.15) ** 2;
  // In orbit the altitude hardly changes: a log that starts in flight says little.
  const [edge, width, most] = startsSlow ? [0.9, 0.2, 12] : [0.6, 0.5, 2];
  return ratio < edge ? Math.min(most, (Math.log(edge / ratio) / width) ** 2) : 0;
}

/**
 * Gravity as the coasts show it, in (speed unit)²/(altitude unit): without thrust and air v²/2 + g·h stays what
 * it is, so g is −Δ(v²/2)/Δh. The median over windows where most agree; NaN where no coast is seen.
 */
function freeFall(h: Float64Array, v: Float64Array): number {
  const width = Math.max(2, Math.floor(h.length / 100));
  const found: number[] = [];
  for (let i = 0; i + width < h.length; i += width) {
    const dh = h[i + width]! - h[i]!;
    const g = (v[i]! ** 2 - v[i + width]! ** 2) / (2 * dh);
    if (Number.isFinite(g) && g > 0) found.push(g);
  }
  const middle = median(found);
  const agreeing = found.filter((g) => Math.abs(g - middle) < 0.1 * middle).length;
  return agreeing >= 5 && agreeing > 0.5 * found.length ? middle : Number.NaN;
}

/** Gravity of the worlds that rockets fly from: the Moon's to half as much again as the Earth's. */
function unlikelyGravity(g_m_s2: number): number {
  if (!(g_m_s2 > 0)) return 0;
  const off = g_m_s2 > 15 ? Math.log(g_m_s2 / 15) : g_m_s2 < 1.2 ? Math.log(1.2 / g_m_s2) : 0;
  return Math.min(12, (off / 0.3) ** 2);
}

/** Penalty for a value outside a range, in squares of `width` decades. */
function outside(value: number, low: number, high: number, width: number): number {
  if (!(value > 0)) return 0;
  if (value < low) return (Math.log10(low / value) / width) ** 2;
  return value > high ? (Math.log10(value / high) / width) ** 2 : 0;
}
