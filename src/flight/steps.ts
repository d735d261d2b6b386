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

/**
 * Replaces a staircase by the points where it steps: between two samples the true value crossed the middle of
 * the old and the new level (for a rounded channel; a truncated one is half a step low throughout). The first
 * and last samples stay, so that the ends are held. A channel that changes at every sample comes back as it is.
 */
export function stairEdges(samples: Samples): Samples {
  const { t, y } = samples;
  const n = t.length;
  const keptT: number[] = [];
  const keptY: number[] = [];
  let changes = 0;
  for (let i = 1; i < n; i++) if (y[i] !== y[i - 1]) changes++;
  if (n < 3 || changes > 0.6 * (n - 1) || changes < 3) return samples;
  keptT.push(t[0]!);
  keptY.push(y[0]!);
  for (let i = 1; i < n; i++) {
    if (y[i] === y[i - 1]) continue;
    const at = (t[i]! + t[i - 1]!) / 2;
    if (at <= keptT[keptT.length - 1]!) continue;
    keptT.push(at);
    keptY.push((y[i]! + y[i - 1]!) / 2);
  }
  if (t[n - 1]! > keptT[keptT.length - 1]!) {
    keptT.push(t[n - 1]!);
    keptY.push(y[n - 1]!);
  }
  return { t: Float64Array.from(keptT), y: Float64Array.from(keptY) };
}
