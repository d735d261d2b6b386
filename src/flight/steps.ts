/** Samples of a channel where it carries information: all of them, or only the edges of its staircase. */

export interface Samples {
  readonly t: Float64Array;
  readonly y: Float64Array;
}

/** The finite samples of a channel. */
export function finiteSamples(t: Float64Array, y: Float64Array): Samples {
  let n = 0;
  for (let i = 0; i < y.length; i++) if (Number.isFinite(y[i]!)) n++;
  if (n === y.length) return { t, y };
  const keptT = new Float64Array(n);
  const keptY = new Float64Array(n);
  let k = 0;
  for (let i = 0; i < y.length; i++) {
    if (!Number.isFinite(y[i]!)) continue;
    keptT[k] = t[i]!;
    keptY[k] = y[i]!;
    k++;
  }
  return { t: keptT, y: keptY };
}

/** A staircase's informative points, and the height of its steps where that is more than the rounding step. */
export interface Stairs {
  readonly samples: Samples;
  /** Median height of a step. */
  readonly step: number;
}

/** A level counts as held when it lasts this many times longer than the levels on both sides. */
const HELD_RATIO = 3;

/**
 * Replaces a staircase by the points where it steps: between two samples the true value crossed the middle of
 * the old and the new level (for a rounded channel; a truncated one is half a step low throughout). Where a
 * display runs quickly through many small levels from one held level to the next, that run is one step, crossed
 * when the run begins. The first and last samples stay, so that the ends are held. Null where the channel
 * changes at most samples and so is no staircase.
 */
export function stairEdges(samples: Samples): Stairs | null {
  const { t, y } = samples;
  const n = t.length;
  /** First row of each level. */
  const levels: number[] = [0];
  for (let i = 1; i < n; i++) if (y[i] !== y[i - 1]) levels.push(i);
  const changes = levels.length - 1;
  if (n < 3 || changes > 0.6 * (n - 1) || changes < 3) return null;
  const lasts = levels.map((row, k) => t[levels[k + 1] ?? n - 1]! - t[row]!);
  const held = lasts.map((d, k) => {
    const before = lasts[k - 1] ?? 0;
    const after = lasts[k + 1] ?? 0;
    return d > HELD_RATIO * Math.max(before, after);
  });
  const keptT: number[] = [t[0]!];
  const keptY: number[] = [y[0]!];
  const heights: number[] = [];
  let k = 0;
  while (k < changes) {
    const to = endOfRun(lasts, held, k);
    const row = levels[k + 1]!;
    const at = (t[row]! + t[row - 1]!) / 2;
    const from = y[levels[k]!]!;
    const next = y[levels[to]!]!;
    if (at > keptT[keptT.length - 1]!) {
      keptT.push(at);
      keptY.push((from + next) / 2);
      heights.push(Math.abs(next - from));
    }
    k = to;
  }
  if (t[n - 1]! > keptT[keptT.length - 1]!) {
    keptT.push(t[n - 1]!);
    keptY.push(y[n - 1]!);
  }
  heights.sort((a, b) => a - b);
  return {
    samples: { t: Float64Array.from(keptT), y: Float64Array.from(keptY) },
    step: heights[heights.length >> 1] ?? 0,
  };
}

/** Level at which a run that starts from level `k` comes to rest: the next level, or the next held one. */
function endOfRun(lasts: readonly number[], held: readonly boolean[], k: number): number {
  if (held[k] !== true) return k + 1;
  let spent = 0;
  for (let j = k + 1; j < lasts.length; j++) {
    if (held[j] === true) return spent < Math.min(lasts[k]!, lasts[j]!) ? j : k + 1;
    spent += lasts[j]!;
    if (spent >= lasts[k]!) break;
  }
  return k + 1;
}
