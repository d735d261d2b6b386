/** A minimum found by `nelderMead`. */
export interface Minimum {
  readonly x: readonly number[];
  readonly value: number;
  readonly evaluations: number;
}

/**
 * Minimises a function of a few variables by the simplex search of Nelder & Mead (1965) with the adaptive
 * coefficients of Gao & Han (2012).
 * @param start first corner of the simplex
 * @param steps how far its other corners lie along each variable
 * @param tolerance the search ends when the corners' values differ by less than this
 */
export function nelderMead(
  value: (x: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
  tolerance: number,
  mostEvaluations: number,
): Minimum {
  const n = start.length;
  let evaluations = 0;
  const at = (x: number[]): { x: number[]; f: number } => {
    evaluations++;
    const f = value(x);
    return { x, f: Number.isFinite(f) ? f : Number.MAX_VALUE };
  };
  const corners = [at([...start])];
  for (let i = 0; i < n; i++) corners.push(at(start.map((v, j) => (i === j ? v + steps[i]! : v))));
  const [expand, contract, shrink] = [1 + 2 / n, 0.75 - 0.5 / n, 1 - 1 / Math.max(n, 2)];
  while (evaluations < mostEvaluations) {
    corners.sort((a, b) => a.f - b.f);
    const best = corners[0]!;
    const worst = corners[n]!;
    if (worst.f - best.f < tolerance) break;
    const middle = start.map((_, j) => corners.slice(0, n).reduce((sum, c) => sum + c.x[j]!, 0) / n);
    const along = (k: number) => at(middle.map((m, j) => m + k * (worst.x[j]! - m)));
    const mirrored = along(-1);
    if (mirrored.f < best.f) {
      const further = along(-expand);
      corners[n] = further.f < mirrored.f ? further : mirrored;
    } else if (mirrored.f < corners[n - 1]!.f) corners[n] = mirrored;
    else {
      const inside = along(mirrored.f < worst.f ? -contract : contract);
      if (inside.f < Math.min(mirrored.f, worst.f)) corners[n] = inside;
      else
        for (let i = 1; i <= n; i++)
          corners[i] = at(best.x.map((b, j) => b + shrink * (corners[i]!.x[j]! - b)));
    }
  }
  corners.sort((a, b) => a.f - b.f);
  return { x: corners[0]!.x, value: corners[0]!.f, evaluations };
}
