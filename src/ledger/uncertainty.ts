import type { Flight } from '../flight/types.ts';
import { END_SAMPLES, edgeVariance } from './burnError.ts';
import { fitVariances } from './fitSensitivity.ts';
import type { LossCurves } from './lossCurves.ts';

/** One-sigma errors of the ledger's entries, m/s, from noise, smoothing, sampling, gaps and identification. */
export interface LedgerSigmas {
  readonly ideal: number;
  readonly backPressure: number;
  readonly steering: number;
  readonly drag: number;
  readonly gravity: number;
  readonly frame: number;
  readonly holdDown: number;
  readonly speedGained: number;
  readonly unexplained: number;
}

/** Samples that the altitude's smoothed value at an end leans on. */
const ALTITUDE_SAMPLES = 20;
/** Pitch at a burn's inserted edges leans on two samples run on: this much more variance (by 1,200 noisy flights). */
const EDGE_SHARE = 1.15;
/** A gap longer than this, and than four usual steps, is bounded by what could have happened inside it. */
const LONG_GAP_S = 2;

/**
 * Propagates the channels' noise through the integrals to first order. Errors of the altitude's rate cancel along
 * an integral except where its weight changes: ∫w·δḣ dt = [w·δh] − ∫δh dw. The path's angle while it is gathered
 * from the pitch keeps its error. White noise of pitch and speed averages out. The rounding of a plateau's mass does
 * not. To each comes the trapezoid rule's own error, judged from the integrand's bend, and what the identified
 * vehicle's covariance gives.
 */
export function ledgerSigmas(flight: Flight, curves: LossCurves): LedgerSigmas {
  const { time, noise, gaps, radius, mission, mass } = flight;
  const mu = mission.world.mu_m3_s2;
  const longGap = Math.max(LONG_GAP_S, (4 * (time[time.length - 1]! - time[0]!)) / time.length);
  const pitched = flight.pitch !== null && curves.steering !== null;
  const rate_m_s = flight.log.channels.verticalSpeed === undefined ? null : noise.verticalSample_m_s;
  const gravity = new RateError(noise.altitude_m, rate_m_s);
  const steering = new RateError(noise.altitude_m, rate_m_s);
  const both = new RateError(noise.altitude_m, rate_m_s);
  let gathered = 0;
  let pitch = 0;
  let misled = 0;
  let drag = 0;
  let gapBound = 0;
  for (let i = Math.max(curves.start, flight.liftOffIndex) + 1; i <= curves.end; i++) {
    const dt = time[i]! - time[i - 1]!;
    const v = Math.max(curves.speed[i]!, 5);
    const g = mu / (radius[i]! * radius[i]!);
    const angle = flight.riseAngleSigma[i]!;
    const thrust = (gaps.vacuum[i - 1]! - gaps.back[i - 1]!) / Math.max(dt, 1e-6);
    const off = pitched && thrust > 0 ? angleOff(flight, curves, i) : 0;
    if (Number.isFinite(angle)) gathered += gatheredRate(flight, curves, i, g) * angle * dt;
    else {
      const level = Math.max(Math.cos(flight.flightPathAngle[i]!), 0.1);
      const ofGravity = curves.frame === null ? inertialWeight(flight, i, g) : g / v;
      const ofSteering = (-thrust * Math.sin(off)) / (v * level);
      gravity.add(ofGravity, dt);
      steering.add(ofSteering, dt);
      both.add(ofGravity + ofSteering, dt);
    }
    // The angle between them errs with the pitch, and on a steep path with the speed: δγ = −tan γ·δv/v.
    const steep = Math.min(10, Math.abs(Math.tan(flight.flightPathAngle[i]!)));
    const aside = Number.isFinite(angle) ? 0 : (steep * noise.speed_m_s) / v;
    pitch += (thrust * dt * Math.sin(off)) ** 2 * (noise.pitch_rad ** 2 + aside ** 2);
    misled +=
      (thrust * dt * Math.sin((flight.pitch?.[i] ?? 0) - flight.flightPathAngle[i]!) * noise.pitch_rad) ** 2;
    if (curves.drag !== null && i > curves.start + 1) {
      const step = curves.drag[i]! - curves.drag[i - 1]!;
      if (Number.isFinite(step)) drag += ((2 * step * noise.speed_m_s) / v) ** 2;
    }
    if (dt > longGap) gapBound += 0.02 * g * (dt - longGap);
  }
  const edges = mass === null ? 0 : massEdges(flight, curves);
  const rest = flight.startsInFlight ? 1 : 0;
  const atEnd = flight.cutoffs.find((c) => c.index === curves.end)?.speed_m_s ?? Number.NaN;
  const sample = noise.speed_m_s / Math.sqrt(END_SAMPLES);
  const ends = Math.hypot(Number.isFinite(atEnd) ? atEnd : sample, rest * sample);
  const at = (curve: Float64Array | null): number =>
    curve === null ? 0 : quadratureError(curve, time, curves);
  const fit = fitVariances(flight, curves);
  // A fitted Isp makes up for what the pitch's noise takes from cos α along the burns: a straight line through a
  // random walk ends about 0.7 of the walk's size away (half its variance), and takes its share of steering along.
  const fitted = flight.identified?.adopted === true && pitched ? misled / 2 : 0;
  const steered =
    pitched && curves.ideal !== null ? curves.steering![curves.end]! / curves.ideal[curves.end]! : 0;
  const started =
    (flight.liftOffSigma_s * mu) / radius[Math.min(flight.liftOffIndex, radius.length - 1)]! ** 2;
  const steeringNoise =
    EDGE_SHARE * (Math.sqrt(pitch) + steered * Math.sqrt(2 * fitted)) ** 2 + steering.variance();
  const quadrature = [curves.backPressure, curves.steering, curves.drag, curves.gravity].map(at);
  return {
    ideal: Math.sqrt(edges + fit.ideal + fitted),
    backPressure: Math.hypot(Math.sqrt(fit.backPressure), quadrature[0]!, gapBound),
    steering: Math.hypot(Math.sqrt(steeringNoise + fit.steering), quadrature[1]!, gapBound),
    drag: Math.hypot(Math.sqrt(drag + fit.drag), quadrature[2]!, gapBound),
    gravity: Math.hypot(Math.sqrt(gravity.variance()), gathered, started, quadrature[3]!, gapBound),
    frame: at(curves.frame),
    holdDown: started,
    speedGained: ends,
    unexplained: Math.hypot(
      Math.sqrt(edges + fit.unexplained + pitch + both.variance() + drag),
      gathered,
      ends,
      ...quadrature,
      gapBound,
    ),
  };
}

/** Change of gravity along the frame's velocity with the path's angle, m/s² per rad, the ground speed held. */
function gatheredRate(flight: Flight, curves: LossCurves, i: number, g: number): number {
  const level = Math.cos(flight.flightPathAngle[i]!);
  if (curves.frame !== null) return g * level;
  const { track, verticalSpeed, mission, radius, speed } = flight;
  const V = Math.max(track.inertialSpeed[i]!, 5);
  const up = verticalSpeed[i]!;
  const turning = mission.world.spin_rad_s * radius[i]! * Math.cos(track.latitude[i]!);
  const shrunk = (turning * Math.sin(track.course[i]!) * up) / V;
  return g * ((speed[i]! * level) / V + (up * shrunk) / (V * V));
}

/**
 * Change of g·ḣ/V with ḣ, the speed over the ground held: the horizontal part then shrinks, and with it what the
 * ground's own motion adds to V.
 */
function inertialWeight(flight: Flight, i: number, g: number): number {
  const { track, verticalSpeed, flightPathAngle, mission, radius } = flight;
  const V = Math.max(track.inertialSpeed[i]!, 5);
  const up = verticalSpeed[i]!;
  const turning = mission.world.spin_rad_s * radius[i]! * Math.cos(track.latitude[i]!);
  const steep = Math.min(10, Math.abs(Math.tan(flightPathAngle[i]!)));
  return g / V + ((g * up) / (V * V)) * ((turning * Math.sin(track.course[i]!) * steep) / V);
}

/** Over which the weight's change is taken, so that its own jitter does not count. */
const BLOCK_S = 2;

/** Error of an integral over the altitude's rate: by the altitude's noise, or the logged rate's own. */
class RateError {
  private readonly altitude_m: number;
  private readonly rate_m_s: number | null;
  private squares = 0;
  private first = Number.NaN;
  private blockStart = Number.NaN;
  private last = Number.NaN;
  private elapsed_s = 0;
  private samples = 0;

  constructor(altitude_m: number, rate_m_s: number | null) {
    this.altitude_m = altitude_m;
    this.rate_m_s = rate_m_s;
  }

  /** The integrand's weight on the rate over the next `dt` seconds. */
  add(weight: number, dt: number): void {
    this.last = weight;
    if (this.rate_m_s !== null) {
      this.squares += (weight * dt * this.rate_m_s) ** 2;
      return;
    }
    if (Number.isNaN(this.first)) {
      this.first = weight;
      this.blockStart = weight;
    }
    this.elapsed_s += dt;
    this.samples++;
    if (this.elapsed_s < BLOCK_S) return;
    this.squares += ((weight - this.blockStart) * this.altitude_m) ** 2 / this.samples;
    this.blockStart = weight;
    this.elapsed_s = 0;
    this.samples = 0;
  }

  variance(): number {
    if (this.rate_m_s !== null || Number.isNaN(this.last)) return this.squares;
    const ends = (this.first * this.first + this.last * this.last) * this.altitude_m * this.altitude_m;
    return this.squares + ends / ALTITUDE_SAMPLES;
  }
}

/** Variance of ideal from the masses at the burns' edges, which the logarithm hangs on. */
function massEdges(flight: Flight, curves: LossCurves): number {
  return flight.burns
    .filter((burn) => burn.endIndex <= curves.end)
    .reduce((sum, burn) => sum + edgeVariance(flight, burn), 0);
}

/** Angle between thrust and the frame's velocity, signed as pitch less path, rad. */
function angleOff(flight: Flight, curves: LossCurves, i: number): number {
  const inPlane = (flight.pitch?.[i] ?? 0) - flight.flightPathAngle[i]!;
  if (curves.frame !== null) return inPlane;
  const V = Math.max(flight.track.inertialSpeed[i]!, 1);
  return (flight.pitch?.[i] ?? 0) - Math.asin(Math.max(-1, Math.min(1, flight.verticalSpeed[i]! / V)));
}

/** The trapezoid rule's error, −Σ dt³/12·f'', with f'' from the mean rates of three neighbouring gaps. */
function quadratureError(curve: Float64Array, time: Float64Array, curves: LossCurves): number {
  let sum = 0;
  for (let i = curves.start + 3; i <= curves.end; i++) {
    const a = time[i - 2]! - time[i - 3]!;
    const b = time[i - 1]! - time[i - 2]!;
    const c = time[i]! - time[i - 1]!;
    if (a < 1e-5 || b < 1e-5 || c < 1e-5) continue;
    const ra = (curve[i - 2]! - curve[i - 3]!) / a;
    const rb = (curve[i - 1]! - curve[i - 2]!) / b;
    const rc = (curve[i]! - curve[i - 1]!) / c;
    const bend = (rc - rb) / ((b + c) / 2) - (rb - ra) / ((a + b) / 2);
    const miss = (b * b * bend) / 12;
    if (Number.isFinite(miss)) sum += miss;
  }
  return Math.abs(sum);
}
