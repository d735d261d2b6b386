type Point = readonly [number, number];

/** A curve's unbroken stretches as points of the picture; stretches of one point are left out. */
export function curveRuns(
  time_s: ArrayLike<number>,
  values: ArrayLike<number | null>,
  x: (time_s: number) => number,
  y: (value: number) => number,
): Point[][] {
  const runs: Point[][] = [[]];
  for (let i = 0; i < time_s.length; i++) {
    const t = time_s[i];
    const v = values[i];
    if (t === undefined || v === null || v === undefined || Number.isNaN(v)) runs.push([]);
    else runs[runs.length - 1]?.push([x(t), y(v)]);
  }
  return runs.filter((r) => r.length > 1);
}
