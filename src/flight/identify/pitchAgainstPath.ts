import type { Flight } from '../types.ts';
import { leastSquares } from './leastSquares.ts';

/** What the path says about the pitch channel. */
export interface PitchReading {
  /** How the channel must be counted for the path to turn as it does. */
  readonly sense: 'from-horizon' | 'from-vertical';
  /** Angle by which the thrust axis lies above the pitch as read, and its one-sigma error, rad. */
  readonly bias_rad: number;
  readonly sigma_rad: number;
}

/** Another sense must leave this many times less of the velocity to be believed. */
const MUCH_BETTER = 5;
/** One-sigma shares to which thrust and drag in the books are trusted: what a biased pitch did to them is freed. */
const THRUST_SHARE = 0.02;
const DRAG_SHARE = 0.2;
/** Error of a velocity that every row is allowed, m/s: quadrature, and what the smoother bends. */
const ROW_SIGMA_M_S = 0.3;
/** What is left of an angle when all else is right: quadrature and smoothing, by the reference flights. */
const ANGLE_SIGMA_RAD = 0.0003;
/** Points of the flight that are looked at. */
const MOST = 400;
/** The axis is turned by what was found and fitted anew, unless that was so little that its square is nothing. */
const TURNS = 3;
const SETTLED_RAD = 1e-4;

/**
 * Fits the equations of motion up and along the course over the ground, integrated over the ascent's burns, for an
 * angle δ between thrust axis and pitch, a factor on each burn's thrust and one on drag:
 *   ẇ = T/m·sin(θ + δ) − D/m·sin γ − μ/r² + V_h²/r
 *   u̇ = T/m·cos(θ + δ)·cos(β − χ) − D/m·cos γ − u·w/r − 2ω·cos φ·sin χ·w − ω²r·sin φ·cos φ·cos χ
 * (navigation equations, e.g. Titterton & Weston 2004, §3.5). Thrust alone would take a part of the angle up; both
 * directions together tell them apart. `drag` is drag over mass on the axis, m/s²; null = unknown, taken as none.
 * Null where thrust, pitch or enough powered flight is missing.
 */
export function pitchAgainstPath(flight: Flight, drag: Float64Array | null): PitchReading | null {
  const { pitch, gaps } = flight;
  if (pitch === null || !gaps.known || flight.burns.length === 0) return null;
  const normal = readAs(flight, pitch, drag);
  if (normal === null) return null;
  // What is as near as any row is trusted leaves nothing for another sense to better.
  if (normal.rms <= ROW_SIGMA_M_S)
    return { sense: 'from-horizon', bias_rad: normal.bias, sigma_rad: normal.sigma };
  const turned = readAs(
    flight,
    pitch.map((theta) => Math.PI / 2 - theta),
    drag,
  );
  const sense = turned !== null && turned.rms * MUCH_BETTER < normal.rms ? 'from-vertical' : 'from-horizon';
  return { sense, bias_rad: normal.bias, sigma_rad: normal.sigma };
}

interface Fit {
  readonly bias: number;
  readonly sigma: number;
  readonly rms: number;
}

function readAs(flight: Flight, pitch: Float64Array, drag: Float64Array | null): Fit | null {
  let bias = 0;
  let fit: Fit | null = null;
  for (let turn = 0; turn < TURNS; turn++) {
    fit = fitAbout(flight, pitch, drag, bias);
    if (fit === null) return null;
    const moved = Math.abs(fit.bias - bias);
    bias = fit.bias;
    if (moved < SETTLED_RAD) break;
  }
  return fit;
}

/** One linear fit about the angle `about`. */
function fitAbout(flight: Flight, pitch: Float64Array, drag: Float64Array | null, about: number): Fit | null {
  const { gaps, time, radius, track, verticalSpeed, horizontalSpeed, mission, flightPathAngle } = flight;
  const { mu_m3_s2: mu, spin_rad_s: spin } = mission.world;
  const burns = flight.burns.filter((b) => b.endIndex - b.startIndex > 10);
  const bodies = burns.length;
  // δ, drag, each burn's thrust, and its start speeds up and along.
  const cols = 2 + 3 * bodies;
  const rows: number[] = [];
  const response: number[] = [];
  let lever = 0;
  const put = (entries: readonly (readonly [number, number])[], y: number): void => {
    const row = new Array<number>(cols).fill(0);
    for (const [c, value] of entries) row[c] = value / ROW_SIGMA_M_S;
    rows.push(...row);
    response.push(y / ROW_SIGMA_M_S);
  };
  burns.forEach((burn, b) => {
    const sums = { up: 0, along: 0, dragUp: 0, dragAlong: 0, otherUp: 0, otherAlong: 0 };
    const from = Math.max(burn.startIndex, flight.liftOffIndex);
    const stride = Math.max(1, Math.ceil((burn.endIndex - from) / (MOST / bodies)));
    const factor = 2 + b;
    const mean = (y: Float64Array, i: number): number => (y[i - 1]! + y[i]!) / 2;
    for (let i = from; i <= burn.endIndex; i++) {
      if (i > from) {
        const dt = time[i]! - time[i - 1]!;
        const push = gaps.vacuum[i - 1]! - gaps.back[i - 1]!;
        const theta = mean(pitch, i) + about;
        const r = mean(radius, i);
        const w = mean(verticalSpeed, i);
        const u = mean(horizontalSpeed, i);
        const around = mean(track.inertialHorizontalSpeed, i);
        const chi = track.course[i]!;
        const phi = mean(track.latitude, i);
        const heading = track.heading[i]!;
        const aside = Number.isFinite(heading) ? Math.cos(heading - chi) : 1;
        const gamma = mean(flightPathAngle, i);
        const air = drag === null ? 0 : mean(drag, i) * dt;
        sums.up += push * Math.sin(theta);
        sums.along += push * Math.cos(theta) * aside;
        if (Number.isFinite(air)) {
          sums.dragUp -= air * Math.sin(gamma);
          sums.dragAlong -= air * Math.cos(gamma);
        }
        sums.otherUp += ((around * around) / r - mu / (r * r)) * dt;
        sums.otherAlong -=
          ((u * w) / r +
            2 * spin * Math.cos(phi) * Math.sin(chi) * w +
            spin * spin * r * Math.sin(phi) * Math.cos(phi) * Math.cos(chi)) *
          dt;
        lever += Math.abs(push);
      }
      // Where the path's own angle was gathered from the pitch it bears no witness.
      if ((i - from) % stride !== 0 || Number.isFinite(flight.riseAngleSigma[i]!)) continue;
      put(
        [
          [0, sums.along],
          [1, sums.dragUp],
          [factor, sums.up],
          [2 + bodies + b, 1],
        ],
        verticalSpeed[i]! - sums.otherUp - sums.up - sums.dragUp,
      );
      put(
        [
          [0, -sums.up],
          [1, sums.dragAlong],
          [factor, sums.along],
          [2 + 2 * bodies + b, 1],
        ],
        horizontalSpeed[i]! - sums.otherAlong - sums.along - sums.dragAlong,
      );
    }
  });
  const count = response.length;
  if (count < 3 * cols || lever < 100) return null;
  const prior = (column: number, sigma: number): void => {
    rows.push(...new Array<number>(cols).fill(0).map((_, c) => (c === column ? 1 / sigma : 0)));
    response.push(0);
  };
  prior(1, DRAG_SHARE);
  for (let b = 0; b < bodies; b++) prior(2 + b, THRUST_SHARE);
  const a = Float64Array.from(rows);
  const { x, inverseNormal } = leastSquares(cols, a, Float64Array.from(response));
  const misses = response.slice(0, count).map((y, i) => {
    let sum = y;
    for (let c = 0; c < cols; c++) sum -= a[i * cols + c]! * x[c]!;
    return sum * ROW_SIGMA_M_S;
  });
  const rms = Math.sqrt(misses.reduce((sum, m) => sum + m * m, 0) / count);
  return {
    bias: about + x[0]!,
    sigma: Math.hypot(
      ANGLE_SIGMA_RAD,
      Math.sqrt(inverseNormal[0]! * waviness(misses)) * Math.max(1, rms / ROW_SIGMA_M_S),
    ),
    rms,
  };
}

/** By how much slow waves widen a fit: (1 + ρ)/(1 − ρ) of the misses' correlation with the next of their kind. */
function waviness(misses: readonly number[]): number {
  let squares = 0;
  let products = 0;
  for (let i = 2; i < misses.length; i++) {
    squares += misses[i]! ** 2;
    products += misses[i]! * misses[i - 2]!;
  }
  const rho = squares === 0 ? 0 : Math.max(0, Math.min(0.98, products / squares));
  return (1 + rho) / (1 - rho);
}
