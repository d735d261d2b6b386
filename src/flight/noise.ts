/**
 * White noise of a channel as its own samples show it: the robust spread of each sample about the cubic through
 * its four neighbours, so that smooth motion does not count.
 */

/** Normal-consistency factor of the median absolute deviation. */
const MAD_TO_SIGMA = 1.4826;

/** So many samples tell the spread to 2 %. */
const ENOUGH_SAMPLES = 4000;

/**
 * One-sigma noise in the channel's unit; 0 where fewer than 9 samples are finite. `t` is strictly increasing.
 * Of more than 8,000 samples some 4,000 are looked at, spread evenly.
 */
export function whiteNoise(t: Float64Array, y: Float64Array): number {
  const n = t.length;
  if (n < 9) return 0;
  const stride = Math.max(1, Math.floor(n / ENOUGH_SAMPLES));
  const spread = new Float64Array(Math.ceil((n - 4) / stride));
  let count = 0;
  for (let i = 2; i < n - 2; i += stride) {
    // Lagrange's weights of the cubic through the neighbours, times taken from the sample's own.
    const a = t[i - 2]! - t[i]!;
    const b = t[i - 1]! - t[i]!;
    const c = t[i + 1]! - t[i]!;
    const d = t[i + 2]! - t[i]!;
    const wa = (b * c * d) / ((b - a) * (c - a) * (d - a));
    const wb = (a * c * d) / ((a - b) * (c - b) * (d - b));
    const wc = (a * b * d) / ((a - c) * (b - c) * (d - c));
    const wd = (a * b * c) / ((a - d) * (b - d) * (c - d));
    const estimate = wa * y[i - 2]! + wb * y[i - 1]! + wc * y[i + 1]! + wd * y[i + 2]!;
    const off = Math.abs(y[i]! - estimate) / Math.sqrt(1 + wa * wa + wb * wb + wc * wc + wd * wd);
    if (Number.isFinite(off)) spread[count++] = off;
  }
  if (count < 5) return 0;
  return MAD_TO_SIGMA * spread.subarray(0, count).sort()[Math.floor(count / 2)]!;
}
