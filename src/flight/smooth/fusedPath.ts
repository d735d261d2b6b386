import {
  type Filtered,
  kalmanFilter,
  kalmanSmooth,
  type Observations,
  type Smoothed,
  type StateModel,
} from './kalman.ts';
import { randomWalkStep } from './randomWalk.ts';

/** A channel's samples with the variance of each. */
export interface WeighedSamples {
  readonly t: Float64Array;
  readonly y: Float64Array;
  readonly variance: Float64Array;
}

/** What is known of a path; null where a channel is not logged. */
export interface PathEvidence {
  readonly altitude: WeighedSamples;
  readonly verticalSpeed: WeighedSamples | null;
  readonly horizontalSpeed: WeighedSamples | null;
  /** Length of the velocity. */
  readonly speed: WeighedSamples | null;
  /** Distance along the ground, as the horizontal speed gathers it. */
  readonly distance: WeighedSamples | null;
  /** Instants at which the acceleration jumps, rising. */
  readonly breaks: readonly number[];
  /** Instant until which the vehicle stands on its pad; null where the record starts in motion. */
  readonly restUntil_s: number | null;
  /** Speeds near the truth, about which the length of the velocity is taken as linear; on `query`. */
  readonly guess: { readonly verticalSpeed: Float64Array; readonly speed: Float64Array };
  /** Where the path is asked for, rising. */
  readonly query: Float64Array;
}

/** The path that agrees best with all channels at once, on `query`, with one-sigma errors. */
export interface FusedPath {
  readonly altitude: Float64Array;
  readonly verticalSpeed: Float64Array;
  readonly horizontalSpeed: Float64Array;
  readonly altitudeSigma: Float64Array;
  readonly verticalSigma: Float64Array;
  readonly horizontalSigma: Float64Array;
  /** Spectral density of the jerk that the samples themselves make likeliest, (m/s³)²·s. */
  readonly jerkDensity: number;
}

/** State: altitude, vertical speed, vertical acceleration; distance along the ground, horizontal speed, acceleration. */
const SIZE = 6;
const CHAIN = 3;
/** Samples closer together are taken as one. */
const SPACING_S = 0.1;
/** More nodes are not worked through. */
const MOST_NODES = 60000;
/** Nodes that the jerk's density is sought on. */
const SOUGHT_NODES = 1500;
/** Jump of the acceleration that a break allows, m/s². */
const JUMP_M_S2 = 60;
/** The length of a velocity shorter than so many sigmas bends too much to be taken as linear. */
const LINEAR_SIGMAS = 5;
/** The length of the velocity is linearised so many times. */
const TURNS = 2;
/** Channels that tell the same motion leave about their own variance or less. */
const AGREES = 2.5;

/** Null where the record is too short or too long for it, or its channels do not tell the same motion. */
export function fusePath(evidence: PathEvidence): FusedPath | null {
  const nodes = nodeTimes(evidence);
  if (nodes === null) return null;
  let about = onNodes(evidence, nodes.time);
  let observed = observe(evidence, nodes.time, about);
  const density = likeliestDensity((q, most) => model(evidence, nodes, observed, q, most));
  let state = smoothed(density);
  for (let turn = 1; turn < TURNS; turn++) {
    const { mean } = state;
    about = {
      vertical: nodes.time.map((_, k) => mean[k * SIZE + 1]!),
      horizontal: nodes.time.map((_, k) => mean[k * SIZE + CHAIN + 1]!),
    };
    observed = observe(evidence, nodes.time, about);
    state = smoothed(density);
  }
  if (worstMisfit(observed, state.mean) > AGREES) return null;
  return answers(evidence.query, nodes.time, state, density);

  function smoothed(q: number): Smoothed {
    const whole = model(evidence, nodes!, observed, q, nodes!.time.length);
    return kalmanSmooth(whole, kalmanFilter(whole));
  }
}

/** Largest mean square, over the channels, of what the smoothed path leaves of the samples, in their variances. */
function worstMisfit(observed: Observed, mean: Float64Array): number {
  const { node, y, variance, rows, channel } = observed;
  const squares: number[] = [];
  const counts: number[] = [];
  for (let o = 0; o < y.length; o++) {
    let miss = y[o]!;
    for (let i = 0; i < SIZE; i++) miss -= rows[o * SIZE + i]! * mean[node[o]! * SIZE + i]!;
    const c = channel[o]!;
    squares[c] = (squares[c] ?? 0) + (miss * miss) / variance[o]!;
    counts[c] = (counts[c] ?? 0) + 1;
  }
  return Math.max(...squares.flatMap((s, c) => (s === undefined ? [] : [s / counts[c]!])));
}

interface Nodes {
  readonly time: Float64Array;
  /** 1 where the acceleration jumps on the way to the node. */
  readonly jumps: Uint8Array;
}

/** Sample times, at least `SPACING_S` apart, with two nodes at each break. */
function nodeTimes(evidence: PathEvidence): Nodes | null {
  const from = evidence.restUntil_s ?? Number.NEGATIVE_INFINITY;
  const channels = present(evidence);
  const at = Float64Array.from([...new Set(channels.map((c) => c.t))].flatMap(apart)).sort();
  const time: number[] = [];
  const jumps: number[] = [];
  const put = (t: number, jump: 0 | 1): void => {
    time.push(t);
    jumps.push(jump);
  };
  if (Number.isFinite(from)) put(from, 0);
  let b = evidence.breaks.findIndex((x) => x > from);
  if (b === -1) b = evidence.breaks.length;
  const pastBreaks = (t: number): void => {
    for (; b < evidence.breaks.length && evidence.breaks[b]! <= t; b++) {
      if (time.length === 0) continue;
      put(evidence.breaks[b]!, 0);
      put(evidence.breaks[b]!, 1);
    }
  };
  for (const t of at) {
    if (t <= from || (time.length > 0 && t - time[time.length - 1]! < SPACING_S * 0.999)) continue;
    pastBreaks(t);
    if (time.length === 0 || t > time[time.length - 1]!) put(t, 0);
    if (time.length > MOST_NODES) return null;
  }
  return time.length < 10 ? null : { time: Float64Array.from(time), jumps: Uint8Array.from(jumps) };
}

/** Times of a channel at least `SPACING_S` apart. */
function apart(t: Float64Array): number[] {
  const kept: number[] = [];
  for (const x of t) if (!(x - kept[kept.length - 1]! < SPACING_S * 0.999)) kept.push(x);
  return kept;
}

function present(evidence: PathEvidence): WeighedSamples[] {
  const { altitude, verticalSpeed, horizontalSpeed, speed, distance } = evidence;
  return [altitude, verticalSpeed, horizontalSpeed, speed, distance].filter((c) => c !== null);
}

interface About {
  readonly vertical: Float64Array;
  readonly horizontal: Float64Array;
}

function onNodes({ query, guess }: PathEvidence, time: Float64Array): About {
  const vertical = new Float64Array(time.length);
  const horizontal = new Float64Array(time.length);
  let q = 0;
  for (let k = 0; k < time.length; k++) {
    while (q + 1 < query.length && query[q + 1]! <= time[k]!) q++;
    const v = guess.speed[q]!;
    const w = Math.max(-v, Math.min(v, guess.verticalSpeed[q]!));
    vertical[k] = w;
    horizontal[k] = Math.sqrt(Math.max(0, v * v - w * w));
  }
  return { vertical, horizontal };
}

interface Observed extends Observations {
  /** Which channel each observation comes from. */
  readonly channel: Int32Array;
}

/** Writes a channel's H for a sample `dt` after node k; false where the sample is not to be used. */
type Row = (H: Float64Array, k: number, dt: number, variance: number) => boolean;

/** The samples as observations of the state at the nodes before them; samples between two nodes as their mean. */
function observe(evidence: PathEvidence, time: Float64Array, about: About): Observed {
  const position = (at: number): Row => {
    return (H, _, dt) => {
      H[at] = 1;
      H[at + 1] = dt;
      H[at + 2] = (dt * dt) / 2;
      return true;
    };
  };
  const rate = (at: number): Row => {
    return (H, _, dt) => {
      H[at + 1] = 1;
      H[at + 2] = dt;
      return true;
    };
  };
  // |v| is of first degree in its components: it equals its own gradient times them.
  const length: Row = (H, k, dt, variance) => {
    const w = about.vertical[k]!;
    const u = about.horizontal[k]!;
    const v = Math.hypot(w, u);
    if (v < LINEAR_SIGMAS * Math.sqrt(variance)) return false;
    H[1] = w / v;
    H[2] = (dt * w) / v;
    H[CHAIN + 1] = u / v;
    H[CHAIN + 2] = (dt * u) / v;
    return true;
  };
  const channels = [
    { samples: evidence.altitude, row: position(0) },
    { samples: evidence.verticalSpeed, row: rate(0) },
    { samples: evidence.horizontalSpeed, row: rate(CHAIN) },
    { samples: evidence.distance, row: position(CHAIN) },
    { samples: evidence.speed, row: length },
  ].flatMap(({ samples, row }) => {
    if (samples === null) return [];
    let next = 0;
    while (next < samples.t.length && samples.t[next]! < time[0]!) next++;
    return [{ samples, row, next }];
  });
  const most = time.length * channels.length;
  const node = new Int32Array(most);
  const channel = new Int32Array(most);
  const y = new Float64Array(most);
  const variance = new Float64Array(most);
  const rows = new Float64Array(most * SIZE);
  let o = 0;
  for (let k = 0; k < time.length; k++) {
    const end = k + 1 < time.length ? time[k + 1]! : Number.POSITIVE_INFINITY;
    for (let c = 0; c < channels.length; c++) {
      const own = channels[c]!;
      const { t, y: values, variance: spread } = own.samples;
      let gathered = 0;
      let value = 0;
      let weight = 0;
      for (; own.next < t.length && t[own.next]! < end; own.next++) {
        const share = 1 / spread[own.next]!;
        gathered += share * t[own.next]!;
        value += share * values[own.next]!;
        weight += share;
      }
      if (weight === 0) continue;
      const H = rows.subarray(o * SIZE, (o + 1) * SIZE);
      if (!own.row(H, k, gathered / weight - time[k]!, 1 / weight)) continue;
      node[o] = k;
      channel[o] = c;
      y[o] = value / weight;
      variance[o] = 1 / weight;
      o++;
    }
  }
  return {
    node: node.subarray(0, o),
    channel: channel.subarray(0, o),
    y: y.subarray(0, o),
    variance: variance.subarray(0, o),
    rows: rows.subarray(0, o * SIZE),
  };
}

function model(
  evidence: PathEvidence,
  { time, jumps }: Nodes,
  observations: Observations,
  density: number,
  most: number,
): StateModel {
  const nodes = Math.min(time.length, most);
  const start = new Float64Array(SIZE);
  const startCovariance = new Float64Array(SIZE * SIZE);
  const spread = (i: number, sigma: number): void => {
    startCovariance[i * SIZE + i] = sigma * sigma;
  };
  const { altitude, guess, query, restUntil_s } = evidence;
  start[0] = altitude.y[0]!;
  if (restUntil_s === null) {
    let q = 0;
    while (q + 1 < query.length && query[q + 1]! <= time[0]!) q++;
    start[1] = guess.verticalSpeed[q]!;
    start[CHAIN + 1] = Math.sqrt(Math.max(0, guess.speed[q]! ** 2 - guess.verticalSpeed[q]! ** 2));
  }
  const rest = restUntil_s === null ? 300 : 1e-3;
  spread(0, restUntil_s === null ? 1000 : 3 * Math.sqrt(altitude.variance[0]!));
  spread(1, rest);
  spread(2, JUMP_M_S2);
  spread(CHAIN, evidence.distance === null ? 1e-3 : 1000);
  spread(CHAIN + 1, rest);
  spread(CHAIN + 2, restUntil_s === null ? JUMP_M_S2 : 1);
  const jump = randomWalkStep(CHAIN, 2, 0, density, JUMP_M_S2);
  const usual = randomWalkStep(CHAIN, 2, 0, density);
  let last = 0;
  let used = observations.node.length;
  while (used > 0 && observations.node[used - 1]! >= nodes) used--;
  return {
    size: SIZE,
    nodes,
    start,
    startCovariance,
    step: (k) => {
      if (jumps[k] === 1) return jump;
      const dt = time[k]! - time[k - 1]!;
      // Most steps are as long as the one before.
      if (Math.abs(dt - last) > 1e-9) randomWalkStep(CHAIN, 2, dt, density, 0, usual);
      last = dt;
      return usual;
    },
    observations: {
      node: observations.node.subarray(0, used),
      y: observations.y.subarray(0, used),
      variance: observations.variance.subarray(0, used),
      rows: observations.rows.subarray(0, used * SIZE),
    },
  };
}

const LOWEST_LOG10 = -4;
const HIGHEST_LOG10 = 1.5;

/** Golden section on the logarithm of the density; the likelihood has one summit there. */
function likeliestDensity(modelWith: (density: number, most: number) => StateModel): number {
  const miss = (log10: number): number => -likelihood(kalmanFilter(modelWith(10 ** log10, SOUGHT_NODES)));
  const ratio = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [LOWEST_LOG10, HIGHEST_LOG10];
  let [a, b] = [high - ratio * (high - low), low + ratio * (high - low)];
  let [missA, missB] = [miss(a), miss(b)];
  while (high - low > 0.4) {
    if (missA < missB) {
      [high, b, missB] = [b, a, missA];
      a = high - ratio * (high - low);
      missA = miss(a);
    } else {
      [low, a, missA] = [a, b, missB];
      b = low + ratio * (high - low);
      missB = miss(b);
    }
  }
  return 10 ** ((low + high) / 2);
}

function likelihood({ logLikelihood }: Filtered): number {
  return Number.isFinite(logLikelihood) ? logLikelihood : Number.NEGATIVE_INFINITY;
}

/** State at the times asked for, from the node before each by the motion between it and the node after. */
function answers(
  query: Float64Array,
  time: Float64Array,
  { mean, covariance }: Smoothed,
  jerkDensity: number,
): FusedPath {
  const n = query.length;
  const out: FusedPath = {
    altitude: new Float64Array(n),
    verticalSpeed: new Float64Array(n),
    horizontalSpeed: new Float64Array(n),
    altitudeSigma: new Float64Array(n),
    verticalSigma: new Float64Array(n),
    horizontalSigma: new Float64Array(n),
    jerkDensity,
  };
  let k = 0;
  const last = time.length - 1;
  for (let q = 0; q < n; q++) {
    const at = query[q]!;
    while (k < last && time[k + 1]! <= at) k++;
    const next = Math.min(last, k + 1);
    const gap = time[next]! - time[k]!;
    const x = gap > 0 ? Math.max(0, Math.min(1, (at - time[k]!) / gap)) : 0;
    const between = (i: number): number => {
      const a = Math.max(0, covariance[(k * SIZE + i) * SIZE + i]!);
      return Math.sqrt(a + x * (Math.max(0, covariance[(next * SIZE + i) * SIZE + i]!) - a));
    };
    const h = (i: number): [number, number] => quintic(mean, k * SIZE + i, next * SIZE + i, gap, x);
    const up = h(0);
    const across = h(CHAIN);
    out.altitude[q] = up[0];
    out.verticalSpeed[q] = up[1];
    out.horizontalSpeed[q] = across[1];
    out.altitudeSigma[q] = between(0);
    out.verticalSigma[q] = between(1);
    out.horizontalSigma[q] = between(CHAIN + 1);
  }
  return out;
}

/**
 * Value and rate at share x of a gap whose ends' value, rate and second derivative stand at `a` and `b`: the mean of
 * a motion under white jerk given both ends is the polynomial of fifth degree through them (quintic Hermite).
 */
function quintic(state: Float64Array, a: number, b: number, gap: number, x: number): [number, number] {
  const p0 = state[a]!;
  const v0 = state[a + 1]! * gap;
  const c0 = (state[a + 2]! * gap * gap) / 2;
  if (gap === 0) return [p0, state[a + 1]!];
  const d = state[b]! - p0 - v0 - c0;
  const e = state[b + 1]! * gap - v0 - 2 * c0;
  const f = (state[b + 2]! * gap * gap) / 2 - c0;
  const c3 = 10 * d - 4 * e + f;
  const c4 = -15 * d + 7 * e - 2 * f;
  const c5 = 6 * d - 3 * e + f;
  return [
    p0 + x * (v0 + x * (c0 + x * (c3 + x * (c4 + x * c5)))),
    (v0 + x * (2 * c0 + x * (3 * c3 + x * (4 * c4 + x * 5 * c5)))) / gap,
  ];
}
