import {
  type Filtered,
  kalmanFilter,
  kalmanSmooth,
  type Observations,
  type Smoothed,
  type StateModel,
} from './kalman.ts';
import { answers, type FusedPath } from './pathAnswers.ts';
import { CHAIN, type PathEvidence, SIZE } from './pathEvidence.ts';
import { type Nodes, nodeTimes } from './pathNodes.ts';
import { type About, LINEAR_SIGMAS, observe, onNodes, worstMisfit } from './pathObservations.ts';
import { randomWalkStep } from './randomWalk.ts';

/** Nodes that the jerk's density is sought on. */
const SOUGHT_NODES = 1500;
/** Jump of the acceleration that a break allows, m/s². */
const JUMP_M_S2 = 60;
/**
 * The length of the velocity is linearised anew until no node's linear length is shorter than the length by more than
 * this share of a sample's sigma.
 */
const SETTLED = 0.02;
/** Linearisations at most. */
const MOST_TURNS = 8;
/** A length that is still shorter by more than this share then is no length. */
const ASTRAY = 0.2;
/** Channels that tell the same motion leave about their own variance or less. */
const AGREES = 2.5;

/** Null where the record is too short or too long for it, or its channels do not tell the same motion. */
export function fusePath(evidence: PathEvidence): FusedPath | null {
  const nodes = nodeTimes(evidence);
  if (nodes === null) return null;
  let about = onNodes(evidence, nodes.time);
  let observed = observe(evidence, nodes.time, about);
  // Where no length is logged none can fall short.
  const sigma = Math.sqrt(
    evidence.speed?.variance.reduce((a, b) => Math.max(a, b)) ?? Number.POSITIVE_INFINITY,
  );
  const density = likeliestDensity((q, most) => model(evidence, nodes, observed, q, most));
  let state = smoothed(density);
  // About a wrong direction the length is taken as shorter than it is.
  for (let turn = 1; turn < MOST_TURNS && shortfall(state, about, sigma) > SETTLED; turn++) {
    about = velocityOf(state);
    observed = observe(evidence, nodes.time, about);
    state = smoothed(density);
  }
  if (shortfall(state, about, sigma) > ASTRAY) return null;
  if (worstMisfit(observed, state.mean) > AGREES) return null;
  return answers(evidence.query, nodes.time, state, density);

  function smoothed(q: number): Smoothed {
    const whole = model(evidence, nodes!, observed, q, nodes!.time.length);
    return kalmanSmooth(whole, kalmanFilter(whole));
  }
}

/** A length does not tell forward from backward, and no ascent goes backward: there it is taken about the vertical. */
function velocityOf({ mean }: Smoothed): About {
  const nodes = mean.length / SIZE;
  const vertical = new Float64Array(nodes);
  const horizontal = new Float64Array(nodes);
  for (let k = 0; k < nodes; k++) {
    vertical[k] = mean[k * SIZE + 1]!;
    horizontal[k] = Math.max(0, mean[k * SIZE + CHAIN + 1]!);
  }
  return { vertical, horizontal };
}

/** By how much a velocity is longer than its part along the one that its length was taken about, in sigmas, at most. */
function shortfall({ mean }: Smoothed, about: About, sigma_m_s: number): number {
  let most = 0;
  for (let k = 0; k < about.horizontal.length; k++) {
    const w = mean[k * SIZE + 1]!;
    const u = Math.max(0, mean[k * SIZE + CHAIN + 1]!);
    const [w0, u0] = [about.vertical[k]!, about.horizontal[k]!];
    const v0 = Math.hypot(w0, u0);
    if (v0 < LINEAR_SIGMAS * sigma_m_s) continue;
    most = Math.max(most, Math.hypot(w, u) - (w * w0 + u * u0) / v0);
  }
  return most / sigma_m_s;
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
