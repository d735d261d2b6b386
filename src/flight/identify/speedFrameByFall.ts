import { NO_DRAG_PA } from '../coastFit.ts';
import type { Flight } from '../types.ts';
import { leastSquares } from './leastSquares.ts';

/** What free fall says about the frame that a speed channel was taken to be in. */
export interface FallenFrame {
  /** The frame that the channel was read in, and the one that the fall asks for. */
  readonly readAs: 'ground' | 'inertial';
  readonly fits: 'ground' | 'inertial';
  /** The coast that tells, s. */
  readonly start_s: number;
  readonly end_s: number;
  /** Horizontal inertial speed in its middle: as the fall has it with its one-sigma error, and by both readings. */
  readonly fallen_m_s: number;
  readonly sigma_m_s: number;
  readonly asRead_m_s: number;
  readonly otherwise_m_s: number;
}

/** Shortest coast that is asked, and the longest part of one, s. */
const SHORTEST_S = 8;
const LONGEST_S = 300;
const FEWEST = 12;
/** The other reading must fit so many sigmas better, and itself within so many. */
const SURE = 5;
const NEAR = 4;
/** A spherical world's gravity may be so far off, one sigma: Earth's flattening. */
const GRAVITY_SHARE = 0.002;

/**
 * In free fall above the air the altitude bends by ḧ = V_h²/r − μ/r², V_h horizontal and inertial. Fits each coast's
 * logged altitudes for the share c in V_h² = (1 − c)·V_read² + c·V_other², V_other being what the same channel gives
 * read in the other frame. Null where no coast tells, or where the reading stands.
 */
export function speedFrameByFall(flight: Flight): FallenFrame | null {
  const { log, time, gaps, dynamicPressure, mission } = flight;
  const raw = log.channels.speed ?? log.channels.inertialSpeed;
  if (raw === undefined || mission.world.spin_rad_s === 0) return null;
  let best: FallenFrame | null = null;
  for (let i = Math.max(1, flight.liftOffIndex); i + 1 < time.length; i++) {
    if (gaps.burn[i] !== -1 || dynamicPressure[i]! > NO_DRAG_PA) continue;
    let j = i;
    while (
      j + 1 < time.length &&
      gaps.burn[j] === -1 &&
      dynamicPressure[j + 1]! <= NO_DRAG_PA &&
      time[j + 1]! - time[i]! < LONGEST_S
    )
      j++;
    if (time[j]! - time[i]! >= SHORTEST_S) {
      const found = askCoast(flight, i, j);
      if (found !== null && (best === null || found.sigma_m_s < best.sigma_m_s)) best = found;
    }
    i = j;
  }
  return best;
}

function askCoast(flight: Flight, from: number, to: number): FallenFrame | null {
  const { log, time, radius, track, verticalSpeed, noise, mission } = flight;
  const readAs = log.channels.speed === undefined ? 'inertial' : 'ground';
  const { mu_m3_s2: mu, spin_rad_s: spin } = mission.world;
  const t0 = time[from]!;
  const span = time[to]! - t0;
  const rows: number[] = [];
  const response: number[] = [];
  const bend = { own: 0, ownRate: 0, share: 0, shareRate: 0 };
  const middle = { own: 0, other: 0, at: Number.POSITIVE_INFINITY };
  const sigma = Math.max(noise.altitude_m, 0.3);
  let row = 0;
  const base = radius[from]!;
  for (let i = from; i <= to; i++) {
    const r = radius[i]!;
    const own = track.inertialHorizontalSpeed[i]! ** 2;
    const other = otherwise(flight, i, readAs, spin) ** 2;
    if (i > from) {
      // ∬ over the gap, its mean acceleration held.
      const dt = time[i]! - time[i - 1]!;
      const a = own / r - mu / (r * r);
      const b = (other - own) / r;
      bend.own += bend.ownRate * dt + (a * dt * dt) / 2;
      bend.ownRate += a * dt;
      bend.share += bend.shareRate * dt + (b * dt * dt) / 2;
      bend.shareRate += b * dt;
    }
    const off = Math.abs(time[i]! - t0 - span / 2);
    if (off < middle.at) Object.assign(middle, { own, other, at: off });
    while (row < log.time.length && log.time[row]! - flight.liftOffLogTime_s < time[i]! - 1e-9) row++;
    const altitude = flight.isRow[i] === 1 ? log.channels.altitude?.[row] : undefined;
    if (altitude === undefined || !Number.isFinite(altitude)) continue;
    const h = altitude + (radius[i]! - flight.altitude[i]!) - base;
    rows.push(1 / sigma, (time[i]! - t0) / span / sigma, bend.share / sigma);
    response.push((h - bend.own) / sigma);
  }
  if (response.length < FEWEST || !(Math.abs(bend.share) > 0)) return null;
  const { x, inverseNormal } = leastSquares(3, Float64Array.from(rows), Float64Array.from(response));
  const between = middle.other - middle.own;
  const doubt = (GRAVITY_SHARE * mu) / radius[from]! / Math.abs(between);
  const c = x[2]!;
  const error = Math.hypot(Math.sqrt(inverseNormal[8]!), doubt);
  if (c < SURE * error || Math.abs(c - 1) > NEAR * error) return null;
  const fallen = Math.sqrt(Math.max(0, middle.own + c * between));
  return {
    readAs,
    fits: readAs === 'ground' ? 'inertial' : 'ground',
    start_s: t0,
    end_s: time[to]!,
    fallen_m_s: fallen,
    sigma_m_s: (error * Math.abs(between)) / (2 * Math.max(1, fallen)),
    asRead_m_s: Math.sqrt(middle.own),
    otherwise_m_s: Math.sqrt(middle.other),
  };

  /** Horizontal inertial speed at axis point i with the channel read in the other frame. */
  function otherwise(f: Flight, i: number, as: 'ground' | 'inertial', spin_rad_s: number): number {
    const up = verticalSpeed[i]!;
    const length = as === 'ground' ? f.speed[i]! : f.track.inertialSpeed[i]!;
    const level = Math.sqrt(Math.max(0, length * length - up * up));
    if (as === 'ground') return level;
    const chi = f.track.course[i]!;
    const turning = spin_rad_s * radius[i]! * Math.cos(f.track.latitude[i]!);
    return Math.hypot(level * Math.sin(chi) + turning, level * Math.cos(chi));
  }
}
