import { FEWEST, LEAST_SHARE, MOST_MISS, MOST_STEPS } from './resolution.ts';

/** A change as near as this to half a step, relatively, could be counted on either side. */
const UNSURE = 1e-9;

/** Sums over sorted changes, by which most steps are found or ruled out without going through the changes again. */
export class StepSums {
  private readonly sorted: Float64Array;
  /** Sums of the first k changes and of their squares. */
  private readonly sums: Float64Array;
  private readonly squares: Float64Array;

  constructor(sorted: Float64Array) {
    this.sorted = sorted;
    this.sums = new Float64Array(sorted.length + 1);
    this.squares = new Float64Array(sorted.length + 1);
    for (let k = 0; k < sorted.length; k++) {
      const d = sorted[k]!;
      this.sums[k + 1] = this.sums[k]! + d;
      this.squares[k + 1] = this.squares[k]! + d * d;
    }
  }

  /**
   * The step that a guess comes to when it is refined as over each change, but with all changes of one number of
   * steps at once; null where it certainly comes to nothing, undefined where rounding could decide.
   */
  refined(guess: number): number | null | undefined {
    const { sorted, sums, squares } = this;
    let step = guess;
    for (let round = 0; ; round++) {
      let above = 0;
      let below = 0;
      let off = 0;
      let from = 0;
      for (let n = 0; n <= MOST_STEPS && from < sorted.length; n++) {
        const to = this.below((n + 0.5) * step, from);
        if (to < 0) return undefined;
        const sum = sums[to]! - sums[from]!;
        const count = to - from;
        above += n * sum;
        below += n * n * count;
        off += (squares[to]! - squares[from]!) / (step * step) - (2 * n * sum) / step + n * n * count;
        from = to;
      }
      if (from < FEWEST || below === 0) return null;
      if (round < 3) {
        step = above / below;
        continue;
      }
      if (from <= LEAST_SHARE * sorted.length) return null;
      const [miss, most] = [off / from, MOST_MISS * MOST_MISS];
      return miss > 1.02 * most ? null : miss < 0.98 * most ? step : undefined;
    }
  }

  /** How many changes are below an edge, counted on from `from`; -1 where one lies on it as near as matters. */
  private below(edge: number, from: number): number {
    const { sorted } = this;
    let low = from;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (sorted[middle]! < edge) low = middle + 1;
      else high = middle;
    }
    const clear =
      (low === from || sorted[low - 1]! < edge * (1 - UNSURE)) &&
      (low === sorted.length || sorted[low]! > edge * (1 + UNSURE));
    return clear ? low : -1;
  }
}
