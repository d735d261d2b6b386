/** How a rounded channel moves near one time. */
export interface LocalStep {
  /** Median height of the nearest changes of its value; 0 where there are none. */
  readonly height: number;
  /** Median time between them, s. */
  readonly spacing_s: number;
}

/** Changes looked at. */
const NEAREST = 5;

/**
 * Rounding step of a channel near time `at`: a display may round more coarsely high up than low down, and where
 * the value hardly moves, its rate is known only to about a step over the time between changes.
 */
export function localStep(t: Float64Array, y: Float64Array, at: number): LocalStep {
  const changes: { readonly time_s: number; readonly height: number }[] = [];
  let start = 0;
  let last = t.length - 1;
  while (start < last) {
    const middle = (start + last) >> 1;
    if (t[middle]! < at) start = middle + 1;
    else last = middle;
  }
  const look = (from: number, step: -1 | 1): void => {
    let found = 0;
    for (let i = from; i > 0 && i < t.length && found < NEAREST; i += step) {
      const height = Math.abs(y[i]! - y[i - 1]!);
      if (!(height > 0)) continue;
      changes.push({ time_s: t[i]!, height });
      found++;
    }
  };
  look(start, -1);
  look(start + 1, 1);
  changes.sort((a, b) => Math.abs(a.time_s - at) - Math.abs(b.time_s - at));
  const near = changes.slice(0, NEAREST).sort((a, b) => a.time_s - b.time_s);
  const gaps = near.slice(1).map((c, k) => c.time_s - near[k]!.time_s);
  return { height: middle(near.map((c) => c.height)), spacing_s: middle(gaps) };
}

function middle(values: number[]): number {
  values.sort((a, b) => a - b);
  return values[values.length >> 1] ?? 0;
}
