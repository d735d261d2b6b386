import type { PathEvidence, WeighedSamples } from './pathEvidence.ts';

/** Samples closer together are taken as one. */
const SPACING_S = 0.1;
/** More nodes are not worked through. */
const MOST_NODES = 60000;

/** Where the smoother keeps its state. */
export interface Nodes {
  readonly time: Float64Array;
  /** 1 where the acceleration jumps on the way to the node. */
  readonly jumps: Uint8Array;
}

/** Sample times, at least `SPACING_S` apart, with two nodes at each break. */
export function nodeTimes(evidence: PathEvidence): Nodes | null {
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
