/**
 * Chance that Kendall's score S of `n` untied pairs is at least `score` when nothing relates them: the share of
 * permutations with at most (n(n−1)/2 − score)/2 inversions (Mahonian numbers; Kendall 1938).
 */
export function kendallTail(n: number, score: number): number {
  const pairs = (n * (n - 1)) / 2;
  const most = Math.floor((pairs - score) / 2);
  if (most < 0) return 0;
  if (most >= pairs) return 1;
  // Shares, not counts: they stay finite for every n.
  let share = new Float64Array(most + 1);
  share[0] = 1;
  for (let m = 2; m <= n; m++) {
    const next = new Float64Array(most + 1);
    let window = 0;
    for (let k = 0; k <= most; k++) {
      window += share[k]!;
      if (k >= m) window -= share[k - m]!;
      next[k] = window / m;
    }
    share = next;
  }
  return Math.min(
    1,
    share.reduce((sum, x) => sum + x, 0),
  );
}
