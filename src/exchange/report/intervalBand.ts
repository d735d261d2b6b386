import { curveRuns } from './curveRuns.ts';
import { type Drawing, draw, pathThrough } from './drawing.ts';

type Values = ArrayLike<number | null>;

/** The area between an interval's lower and upper edge, broken where they are not known, in a light shade. */
export function intervalBand(
  time_s: ArrayLike<number>,
  { low, high }: { readonly low: Values; readonly high: Values },
  x: (t: number) => number,
  y: (v: number) => number,
  colour: string,
): Drawing {
  const lower = curveRuns(time_s, low, x, y);
  const d = curveRuns(time_s, high, x, y)
    .map((run, i) => `${pathThrough([...run, ...(lower[i] ?? []).toReversed()])}Z`)
    .join('');
  return draw('path', { d, fill: colour, 'fill-opacity': 0.18 });
}
