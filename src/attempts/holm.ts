/**
 * Holm's correction for asking several questions at once: the k-th smallest p counts as many times as questions
 * are left, never less than the one before. In the order given. (Holm 1979, Scand. J. Statist. 6, 65.)
 */
export function holm(p: readonly number[]): number[] {
  const order = p.map((_, i) => i).sort((i, j) => p[i]! - p[j]!);
  const out = new Array<number>(p.length).fill(1);
  let floor = 0;
  order.forEach((i, k) => {
    floor = Math.max(floor, Math.min(1, p[i]! * (p.length - k)));
    out[i] = floor;
  });
  return out;
}
