import { indexAt, valueAt } from '../../exchange/sampleAt.ts';
import type { Analysis, StripName } from '../../review/types.ts';

/** Points of the altitude axis. */
const points = 160;

/** Quantities of the way down at equal heights above the ground. */
export interface EntryCurves {
  readonly altitude_m: readonly number[];
  readonly speed_m_s: readonly (number | null)[];
  readonly dynamicPressure_Pa: readonly (number | null)[];
}

/** Speed and dynamic pressure over altitude, from entry until it stands on the ground; null where nothing entered. */
export function entryCurves({ review, strips }: Analysis): EntryCurves | null {
  const { entry, touchdown_s } = review.return;
  const altitude = strips.channels.altitude_m?.values;
  if (entry === null || altitude === undefined) return null;
  const from = Math.max(0, indexAt(strips.time_s, entry.start_s));
  const rows: number[] = [];
  // Each row lower than all before it: the fall as a function of altitude.
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = from; i < altitude.length; i++) {
    if (touchdown_s !== null && (strips.time_s[i] ?? 0) >= touchdown_s) break;
    const h = altitude[i] ?? Number.NaN;
    if (h < lowest) {
      rows.push(i);
      lowest = h;
    }
  }
  const top = altitude[rows[0] ?? -1];
  if (top === undefined || rows.length < 3) return null;
  const rising = rows.toReversed();
  const heights = rising.map((i) => altitude[i] ?? 0);
  const bottom = heights[0] ?? 0;
  const altitude_m = Array.from({ length: points + 1 }, (_, k) => bottom + ((top - bottom) * k) / points);
  const read = (name: StripName) => {
    const values = strips.channels[name]?.values;
    const there = rising.map((i) => values?.[i] ?? Number.NaN);
    return altitude_m.map((h) => valueAt(heights, there, h));
  };
  return { altitude_m, speed_m_s: read('speed_m_s'), dynamicPressure_Pa: read('dynamicPressure_Pa') };
}
