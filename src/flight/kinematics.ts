import type { Log, QualityNote } from '../log/types.ts';
import { channelSamples, sigmaOf } from './channelSamples.ts';
import { bendAtBreaks } from './hingeFit.ts';
import { type Break, localPolynomial } from './localPolynomial.ts';
import { filled } from './onAxis.ts';
import type { Samples } from './steps.ts';
import type { Derivation } from './types.ts';

/** Altitude, speed and their split into vertical and horizontal, on any time axis of the flight. */
export interface Kinematics {
  readonly altitude: Float64Array;
  readonly speed: Float64Array;
  readonly verticalSpeed: Float64Array;
  /** One-sigma errors: of the altitude and speed channels' samples, and of the vertical speed as derived. */
  readonly altitudeSigma_m: number;
  readonly speedSigma_m_s: number;
  readonly verticalSpeedSigma_m_s: number;
  readonly derivations: readonly Derivation[];
  readonly notes: readonly QualityNote[];
}

/** Widest smoothing windows: longer ones would bend real motion. */
const WIDEST_RATE_WINDOW_S = 12;
const WIDEST_VALUE_WINDOW_S = 6;
/** Width over which a noisy channel's value at a burn's edge is gathered from both sides. */
const EDGE_WINDOW_S = 16;
/** Altitude noise from which both sides of a burn's edge are needed for its rate. */
const NOISY_M = 0.5;
const NOISY_M_S = 0.1;

/**
 * Derives the path's kinematics from a log whose row times from lift-off are `t`, on the axis `query`.
 * `breaks` are the instants at which the acceleration jumps.
 */
export function deriveKinematics(
  log: Log,
  t: Float64Array,
  query: Float64Array,
  breaks: readonly Break[],
): Kinematics {
  const derivations: Derivation[] = [];
  const notes: QualityNote[] = [];
  const altitude = channelSamples(log, t, 'altitude');
  const altitudeSigma = sigmaOf(altitude);
  const rateWindow = derivativeWindow_s(altitude.samples, altitudeSigma);
  const fit = localPolynomial(altitude.samples.t, altitude.samples.y, query, {
    degree: altitude.stair ? 2 : 3,
    window_s: rateWindow,
    minPoints: altitude.stair ? 6 : 5,
    breaks: altitude.stair ? wellFilled(altitude.samples.t, breaks) : breaks,
  });
  if (!altitude.stair && altitudeSigma > NOISY_M) {
    const bend = { degree: 3, order: 2, window_s: rateWindow, breaks: inFlight(breaks) } as const;
    bendAtBreaks(altitude.samples, query, bend, fit.value, fit.rate);
  }
  const rateSigma = derivativeSigma(altitude.samples, altitudeSigma, rateWindow);
  derivations.push({
    quantity: 'altitude',
    basis: 'measured',
    how: altitude.stair ? 'logged in steps; the edges of the steps are used' : 'logged',
  });

  let verticalSpeed = bridged(query, fit.rate);
  let verticalSigma = rateSigma;
  if (log.channels.verticalSpeed !== undefined) {
    const logged = channelSamples(log, t, 'verticalSpeed');
    verticalSigma = sigmaOf(logged);
    verticalSpeed = smoothValue(logged.samples, query, breaks, verticalSigma, logged.stair);
    derivations.push({ quantity: 'vertical speed', basis: 'measured', how: 'logged' });
    const note = disagreement(verticalSpeed, bridged(query, fit.rate), Math.max(verticalSigma, rateSigma));
    if (note !== null) notes.push(note);
  } else {
    derivations.push({
      quantity: 'vertical speed',
      basis: 'derived',
      how: `rate of the altitude by local cubic least squares over ${rateWindow.toPrecision(2)} s, cut at burn edges`,
    });
  }

  let speed: Float64Array;
  let speedSigma: number;
  if (log.channels.speed !== undefined) {
    const logged = channelSamples(log, t, 'speed');
    speedSigma = sigmaOf(logged);
    speed = smoothValue(logged.samples, query, breaks, speedSigma, logged.stair);
    derivations.push({ quantity: 'speed', basis: 'measured', how: 'logged, over the ground' });
  } else {
    const horizontal = channelSamples(log, t, 'horizontalSpeed');
    const sigma = sigmaOf(horizontal);
    const across = smoothValue(horizontal.samples, query, breaks, sigma, horizontal.stair);
    speed = verticalSpeed.map((v, i) => Math.hypot(v, across[i]!));
    speedSigma = Math.max(sigma, verticalSigma);
    derivations.push({
      quantity: 'speed',
      basis: 'derived',
      how: 'from the logged vertical and horizontal speeds',
    });
  }
  for (let i = 0; i < speed.length; i++) if (speed[i]! < 0) speed[i] = 0;
  // A noisy rate can exceed the speed that it is a part of; the speed channel then bounds it.
  if (verticalSigma > 0.5) {
    verticalSpeed = verticalSpeed.map((w, i) => Math.max(-speed[i]!, Math.min(speed[i]!, w)));
  }
  return {
    altitude: bridged(query, altitudeSigma > 0.5 ? fit.value : valueAt(altitude.samples, query, fit.value)),
    speed,
    verticalSpeed,
    altitudeSigma_m: altitudeSigma,
    speedSigma_m_s: speedSigma,
    verticalSpeedSigma_m_s: verticalSigma,
    derivations,
    notes,
  };
}

/** Fewest steps of a staircase on each side of a break that let it be fitted apart. */
const FILLED = 8;

/** The breaks that leave enough samples on both sides. */
function wellFilled(t: Float64Array, breaks: readonly Break[]): Break[] {
  const kept: Break[] = [];
  let from = 0;
  for (const edge of breaks) {
    let i = from;
    while (i < t.length && t[i]! < edge.time_s) i++;
    if (i - from < FILLED || t.length - i < FILLED) continue;
    kept.push(edge);
    from = i;
  }
  return kept;
}

/** Samples per second of a channel. */
function rateOf(samples: Samples): number {
  const n = samples.t.length;
  return n < 2 ? 1 : (n - 1) / (samples.t[n - 1]! - samples.t[0]!);
}

/** One-sigma error of a derivative by a centred cubic fit: σ·√(18.75/N)/half-width (Legendre moments). */
function derivativeSigma(samples: Samples, sigma: number, window_s: number): number {
  const count = Math.max(5, window_s * rateOf(samples));
  return (sigma * Math.sqrt(18.75 / count)) / Math.max(window_s / 2, 2 / rateOf(samples));
}

/** The window that brings the derivative's error to a tenth of the channel's per second, within bounds. */
function derivativeWindow_s(samples: Samples, sigma: number): number {
  const rate = rateOf(samples);
  const wanted = Math.max(0.02, 0.1 * sigma);
  const window = (75 * sigma * sigma) / (rate * wanted * wanted);
  return Math.min(WIDEST_RATE_WINDOW_S, Math.max(4.01 / rate, Math.cbrt(window)));
}

/** A channel on the axis: smoothed where it is noisy, itself where it is clean. */
function smoothValue(
  samples: Samples,
  query: Float64Array,
  breaks: readonly Break[],
  sigma: number,
  stair: boolean,
): Float64Array {
  const rate = rateOf(samples);
  if (sigma < 0.02) return cleanValue(samples, query, breaks, 4.01 / rate);
  const window_s = Math.min(WIDEST_VALUE_WINDOW_S, Math.max(4.01 / rate, 50 / rate));
  const fit = localPolynomial(samples.t, samples.y, query, { degree: 2, window_s, minPoints: 4, breaks });
  if (sigma > NOISY_M_S && !stair) {
    const bend = { degree: 2, order: 1, window_s: EDGE_WINDOW_S, breaks: inFlight(breaks) } as const;
    bendAtBreaks(samples, query, bend, fit.value, null);
  }
  return bridged(query, fit.value);
}

/** At rest on the pad the speed has a corner that no polynomial reaches over: breaks after time zero only. */
function inFlight(breaks: readonly Break[]): Break[] {
  return breaks.filter((b) => b.time_s > 1);
}

/** Straight lines over the points that a segment with too few samples left open. */
function bridged(query: Float64Array, y: Float64Array): Float64Array {
  return filled(query, y) ?? y;
}

/** A clean channel is its own samples; only between them it is fitted. */
function cleanValue(
  samples: Samples,
  query: Float64Array,
  breaks: readonly Break[],
  window_s: number,
): Float64Array {
  const out = valueAt(samples, query, new Float64Array(query.length).fill(Number.NaN));
  const open = query.filter((_, i) => Number.isNaN(out[i]!));
  const fit = localPolynomial(samples.t, samples.y, open, { degree: 2, window_s, minPoints: 4, breaks });
  let k = 0;
  for (let i = 0; i < out.length; i++) if (Number.isNaN(out[i]!)) out[i] = fit.value[k++]!;
  return bridged(query, out);
}

/** The channel's own sample where the axis has one, else `between`. */
function valueAt(samples: Samples, query: Float64Array, between: Float64Array): Float64Array {
  const out = Float64Array.from(between);
  let j = 0;
  for (let i = 0; i < query.length; i++) {
    while (j < samples.t.length && samples.t[j]! < query[i]!) j++;
    if (j < samples.t.length && samples.t[j] === query[i]) out[i] = samples.y[j]!;
  }
  return out;
}

/** A note where the logged vertical speed and the rate of the altitude tell different stories. */
function disagreement(logged: Float64Array, rate: Float64Array, sigma: number): QualityNote | null {
  let worst = 0;
  let count = 0;
  let seen = 0;
  const allowed = Math.max(5, 6 * sigma);
  for (let i = 0; i < logged.length; i++) {
    const d = Math.abs(logged[i]! - rate[i]!);
    if (!Number.isFinite(d)) continue;
    seen++;
    if (d > allowed) count++;
    if (d > worst) worst = d;
  }
  if (seen === 0 || count < 0.05 * seen) return null;
  return {
    code: 'vertical-speed-disagrees',
    channel: 'verticalSpeed',
    rows: null,
    count,
    text: `The logged vertical speed and the rate of the logged altitude differ by up to ${worst.toFixed(1)} m/s (over ${allowed.toFixed(1)} m/s in ${count} of ${seen} samples); the logged vertical speed is used.`,
  };
}
