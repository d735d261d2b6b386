/**
 * White noise of a channel as its own samples show it: the robust spread of each sample about the cubic through
 * its four neighbours, so that smooth motion does not count.
 */

/** Normal-consistency factor of the median absolute deviation. */
const MAD_TO_SIGMA = 1.4826;

/**
 * One-sigma noise in the channel's unit; 0 where fewer than 9 samples are finite. `t` is strictly increasing.
 * At most about 20,000 samples are looked at, spread evenly.
 */
export function whiteNoise(t: Float64Array, y: Float64Array): number {
  const n = t.length;
  if (n < 9) return 0;
  const stride = Math.max(1, Math.floor(n / 20000));
  const spread: number[] = [];
  for (let i = 2; i < n - 2; i += stride) {
    let estimate = 0;
    let variance = 1;
    for (const j of [i - 2, i - 1, i + 1, i + 2]) {
      let weight = 1;
      for (const k of [i - 2, i - 1, i + 1, i + 2]) {
        if (k !== j) weight *= (t[i]! - t[k]!) / (t[j]! - t[k]!);
      }
      estimate += weight * y[j]!;
      variance += weight * weight;
    }
    const d = Math.abs(y[i]! - estimate) / Math.sqrt(variance);
    if (Number.isFinite(d)) spread.push(d);
  }
  if (spread.length < 5) return 0;
  spread.sort((a, b) => a - b);
  return MAD_TO_SIGMA * spread[Math.floor(spread.length / 2)]!;
}
