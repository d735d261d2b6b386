import type { Observations } from './kalman.ts';
import { CHAIN, type PathEvidence, SIZE } from './pathEvidence.ts';

/** The length of a velocity shorter than so many sigmas bends too much to be taken as linear. */
export const LINEAR_SIGMAS = 5;

/** Velocity at the nodes about which its length is taken as linear, m/s. */
export interface About {
  readonly vertical: Float64Array;
  readonly horizontal: Float64Array;
}

/** The guessed velocity at the nodes. */
export function onNodes({ query, guess }: PathEvidence, time: Float64Array): About {
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

/** Samples as observations of the state, and whose they are. */
export interface Observed extends Observations {
  /** Which channel each observation comes from. */
  readonly channel: Int32Array;
}

/** Writes a channel's H for a sample `dt` after node k; false where the sample is not to be used. */
type Row = (H: Float64Array, k: number, dt: number, variance: number) => boolean;

/** The samples as observations of the state at the nodes before them; samples between two nodes as their mean. */
export function observe(evidence: PathEvidence, time: Float64Array, about: About): Observed {
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

/** Largest mean square, over the channels, of what the smoothed path leaves of the samples, in their variances. */
export function worstMisfit(observed: Observed, mean: Float64Array): number {
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
