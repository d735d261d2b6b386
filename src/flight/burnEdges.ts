import type { GapDrop } from './massDrops.ts';

/**
 * Burn edges lie between samples. They are found from the throttle (which gap), and from the mass line running
 * into its plateau (where in the gap): METHODS §2.
 */

/** A burn before its stage is known; sample indices are of the log. */
export interface RawBurn {
  /** First and last sample that are wholly under thrust. */
  readonly first: number;
  readonly last: number;
  readonly start_s: number;
  readonly end_s: number;
  readonly startMass_kg: number | null;
  readonly endMass_kg: number | null;
  readonly startsBeforeLog: boolean;
  readonly endsAfterLog: boolean;
}

export interface BurnEvidence {
  readonly t: Float64Array;
  readonly throttle: Float64Array | null;
  readonly thrust: Float64Array | null;
  /** Mass as logged. */
  readonly mass: Float64Array | null;
  readonly drops: readonly GapDrop[];
  readonly massSigma_kg: number;
  /** Step to which the mass is rounded; 0 where none is seen. */
  readonly massStep_kg: number;
}

/** Shortest burn that is believed; shorter flickers of the evidence are dropped. */
const SHORTEST_BURN_S = 0.3;

/** Finds the burns of a log from throttle, thrust or mass, whichever it has, in that order. */
export function findBurns(evidence: BurnEvidence): RawBurn[] {
  const { t, mass, drops } = evidence;
  const whole = mass === null ? null : withoutDrops(mass, drops);
  const on = lit(evidence, whole);
  if (on === null) return [];
  const burns: RawBurn[] = [];
  let i = 0;
  while (i < t.length) {
    if (on[i] === 0) {
      i++;
      continue;
    }
    let j = i;
    while (j + 1 < t.length && on[j + 1] === 1) j++;
    if (j > i && t[j]! - t[i]! >= SHORTEST_BURN_S) burns.push(refine(evidence, whole, i, j));
    i = j + 1;
  }
  return burns;
}

/** The mass line with every drop put back, so that it only falls by what the engines took. */
function withoutDrops(mass: Float64Array, drops: readonly GapDrop[]): Float64Array {
  const whole = Float64Array.from(mass);
  for (const drop of drops) for (let i = drop.gap + 1; i < whole.length; i++) whole[i]! += drop.mass_kg;
  return whole;
}

/** 1 for each sample under thrust; null where no channel tells. */
function lit(evidence: BurnEvidence, whole: Float64Array | null): Uint8Array | null {
  const { t, throttle, thrust, massSigma_kg } = evidence;
  const on = new Uint8Array(t.length);
  const command = throttle ?? thrust;
  if (command !== null) {
    let peak = 0;
    for (const c of command) if (c > peak) peak = c;
    let last = 0;
    for (let i = 0; i < t.length; i++) {
      if (Number.isFinite(command[i]!)) last = command[i]! > 0.005 * peak && peak > 0 ? 1 : 0;
      on[i] = last;
    }
    if (whole !== null && throttle !== null) dropDryTails(t, whole, on, massSigma_kg);
    return on;
  }
  if (whole === null) return null;
  const window = flowWindow_s(t, whole, massSigma_kg);
  const falls = flowsBeside(t, whole, window);
  // Stages differ in flow by a factor of sixty and more: only noise and a sliver of the greatest flow bound it.
  const step = (t[t.length - 1]! - t[0]!) / (t.length - 1);
  const least = Math.max(0.002 * falls.peak, (6 * massSigma_kg) / Math.max(window, step));
  // Under thrust the mass falls on both sides of the sample; at an edge it falls on one.
  for (let i = 0; i < t.length; i++) {
    on[i] = falls.peak > 0 && falls.before[i]! > least && falls.after[i]! > least ? 1 : 0;
  }
  return on;
}

/** Mean flow over a window before and after each sample, kg/s; the log's ends take the side that they have. */
function flowsBeside(
  t: Float64Array,
  whole: Float64Array,
  window_s: number,
): { before: Float64Array; after: Float64Array; peak: number } {
  const n = t.length;
  const before = new Float64Array(n);
  const after = new Float64Array(n);
  let a = 0;
  for (let i = 1; i < n; i++) {
    while (a + 1 < i && t[a + 1]! <= t[i]! - window_s) a++;
    before[i] = (whole[a]! - whole[i]!) / (t[i]! - t[a]!);
  }
  let b = n - 1;
  let peak = 0;
  for (let i = n - 2; i >= 0; i--) {
    while (b - 1 > i && t[b - 1]! >= t[i]! + window_s) b--;
    after[i] = (whole[i]! - whole[b]!) / (t[b]! - t[i]!);
    if (after[i]! > peak) peak = after[i]!;
  }
  // At the log's ends a gap that falls clearly less than its neighbour holds an edge.
  if (n > 2) {
    before[0] = after[0]! > 0.7 * after[1]! ? after[0]! : 0;
    after[n - 1] = before[n - 1]! > 0.7 * before[n - 2]! ? before[n - 1]! : 0;
  }
  return { before, after, peak };
}

/** Width over which a flow stands out of the mass channel's noise. */
function flowWindow_s(t: Float64Array, whole: Float64Array, sigma_kg: number): number {
  const n = t.length;
  const meanFlow = Math.max(1e-9, (whole[0]! - whole[n - 1]!) / (t[n - 1]! - t[0]!));
  return Math.min(20, (30 * sigma_kg) / meanFlow);
}

/** A throttle left open over dry tanks is no burn: switch off where the mass no longer falls. */
function dropDryTails(t: Float64Array, whole: Float64Array, on: Uint8Array, sigma_kg: number): void {
  let i = 0;
  while (i < t.length) {
    if (on[i] === 0) {
      i++;
      continue;
    }
    let j = i;
    while (j + 1 < t.length && on[j + 1] === 1) j++;
    const end = whole[j]!;
    const flow = (whole[i]! - end) / Math.max(t[j]! - t[i]!, 1e-9);
    const least = Math.max(4 * sigma_kg, 1e-4 * (whole[i]! - end), 1e-9);
    let k = j;
    while (k > i && whole[k]! - end <= least) k--;
    // Only a tail that would have burnt much more than the noise is a dry one.
    if (k + 1 < j && flow * (t[j]! - t[k + 1]!) > 3 * least) for (let s = k + 2; s <= j; s++) on[s] = 0;
    if (whole[i]! - end <= least) for (let s = i; s <= j; s++) on[s] = 0;
    i = j + 1;
  }
}

function refine(evidence: BurnEvidence, whole: Float64Array | null, first: number, last: number): RawBurn {
  const { t } = evidence;
  const startsBeforeLog = first === 0;
  const endsAfterLog = last === t.length - 1;
  const start = startsBeforeLog ? null : edge(evidence, whole, first, last, -1);
  const end = endsAfterLog ? null : edge(evidence, whole, first, last, 1);
  const start_s = start?.time_s ?? (startsBeforeLog ? t[0]! : (t[first - 1]! + t[first]!) / 2);
  const end_s = end?.time_s ?? (endsAfterLog ? t[last]! : (t[last]! + t[last + 1]!) / 2);
  return {
    first,
    last,
    start_s,
    end_s,
    startMass_kg: evidence.mass === null ? null : (start?.mass_kg ?? evidence.mass[first]!),
    endMass_kg: evidence.mass === null ? null : (end?.mass_kg ?? evidence.mass[last]!),
    startsBeforeLog,
    endsAfterLog,
  };
}

/** How far from an edge the mass line is fitted. */
const LINE_S = 10;
const PLATEAU_S = 20;

/**
 * Where the mass line of a burn meets the plateau before (side −1) or after (side +1) it, and the plateau's
 * mass as logged. Null where there are too few samples for either, or a drop hides the plateau.
 */
function edge(
  evidence: BurnEvidence,
  whole: Float64Array | null,
  first: number,
  last: number,
  side: -1 | 1,
): { time_s: number; mass_kg: number } | null {
  if (whole === null) return null;
  const { t, throttle, mass, drops } = evidence;
  const inner = side === 1 ? last : first;
  const outer = inner + side;
  const plateau: number[] = [];
  for (let i = outer; i >= 0 && i < t.length; i += side) {
    const gap = side === 1 ? i - 1 : i;
    if (drops.some((d) => d.gap === gap)) break;
    if (Math.abs(t[i]! - t[outer]!) > PLATEAU_S) break;
    if (throttle !== null && throttle[i]! > 0.005) break;
    if (Number.isFinite(mass![i]!)) plateau.push(i);
  }
  if (plateau.length === 0) return null;
  // Without a throttle the plateau ends where the next burn begins: keep the samples that do not fall away.
  const level = median(
    throttle === null ? plateau.slice(0, 5).map((i) => mass![i]!) : plateau.map((i) => mass![i]!),
  );
  const line = fitLine(t, throttle, whole, inner, side === 1 ? first : last, -side as -1 | 1);
  if (line === null) return { time_s: (t[inner]! + t[outer]!) / 2, mass_kg: level };
  const thrown = whole[outer]! - mass![outer]!;
  const used = line.perThrottle * (throttle === null ? 1 : throttle[inner]!);
  const gap = Math.abs(t[outer]! - t[inner]!);
  const wholeLevel =
    throttle === null ? level + thrown : insideGap(level + thrown, line.atInner, side * used * gap);
  const delay = used > 0 ? (line.atInner - wholeLevel) / used : 0;
  // With a throttle the edge is in this gap; a noisy mass alone only tells it to within its window.
  const slack = throttle === null ? flowWindow_s(t, whole, evidence.massSigma_kg) : 0;
  const low = Math.min(t[inner]!, t[outer]!) - slack;
  const high = Math.max(t[inner]!, t[outer]!) + slack;
  return { time_s: Math.min(high, Math.max(low, t[inner]! + delay)), mass_kg: wholeLevel - thrown };

  /** A rounded plateau and the edge's gap each bound the mass: the middle of what both allow. */
  function insideGap(rounded: number, atInner: number, burnt: number): number {
    const half = evidence.massStep_kg / 2;
    const low = Math.max(rounded - half, Math.min(atInner, atInner - burnt));
    const high = Math.min(rounded + half, Math.max(atInner, atInner - burnt));
    return low <= high ? (low + high) / 2 : rounded;
  }
}

/** Least-squares mass line against throttle-seconds, from the inner sample into the burn. */
function fitLine(
  t: Float64Array,
  throttle: Float64Array | null,
  whole: Float64Array,
  inner: number,
  far: number,
  into: -1 | 1,
): { atInner: number; perThrottle: number } | null {
  let n = 0;
  let su = 0;
  let sm = 0;
  let suu = 0;
  let sum = 0;
  let used = 0;
  const base = whole[inner]!;
  for (let i = inner; into === 1 ? i <= far : i >= far; i += into) {
    if (i !== inner) {
      const k = i - into;
      const mean = throttle === null ? 1 : (throttle[i]! + throttle[k]!) / 2;
      used += mean * (t[i]! - t[k]!);
    }
    if (Math.abs(t[i]! - t[inner]!) > LINE_S && n >= 3) break;
    if (!Number.isFinite(whole[i]!)) continue;
    const y = whole[i]! - base;
    n++;
    su += used;
    sm += y;
    suu += used * used;
    sum += used * y;
  }
  const spread = n * suu - su * su;
  if (n < 2 || spread <= 0) return null;
  const slope = (n * sum - su * sm) / spread;
  return { atInner: base + (sm - slope * su) / n, perThrottle: -slope };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const mid = sorted.length >> 1;
  return sorted.length % 2 ? sorted[mid]! : (sorted[mid - 1]! + sorted[mid]!) / 2;
}
