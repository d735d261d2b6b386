import { FEWEST, LEAST_SHARE, MOST_MISS, MOST_STEPS } from './resolution.ts';

/** A change as near as this to half a step, relatively, could be counted on either side. */
const UNSURE = 1e-9;

/** Sums over sorted changes, from which most steps are ruled out without going through the changes again. */
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
   * Whether refining a guessed step certainly comes to nothing: the same rounds as over each change, but all changes
   * of one number of steps at once. False where that could turn out otherwise, or where rounding could decide.
   */
  rulesOut(guess: number): boolean {
    const { sorted, sums, squares } = this;
    let step = guess;
    for (let round = 0; ; round++) {
      let above = 0;
      let below = 0;
      let off = 0;
      let from = 0;
      for (let n = 0; n <= MOST_STEPS && from < sorted.length; n++) {
        const to = this.below((n + 0.5) * step, from);
        if (to < 0) return false;
        const sum = sums[to]! - sums[from]!;
        const count = to - from;
        above += n * sum;
        below += n * n * count;
        off += (squares[to]! - squares[from]!) / step ** 2 - (2 * n * sum) / step + n * n * count;
        from = to;
      }
      if (from < FEWEST || below === 0) return true;
      if (round === 3) return from <= LEAST_SHARE * sorted.length || off > from * (1.01 * MOST_MISS) ** 2;
      step = above / below;
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
