/** A line as far as it sets a chart's scale. */
export interface RangedLine {
  readonly values: readonly (number | null)[];
  /** True for a line that may run out of the picture: it sets no scale, unless little room shows it whole. */
  readonly guest: boolean;
}

/** A guest is shown whole where that takes no more than this share of the lines' own range on top of it. */
const guestRoom = 0.5;

/**
 * Lowest and highest value of a chart: what its lines need between two times, with a little room.
 * @param from_zero the scale begins at zero where nothing is below it
 * @param log the scale is logarithmic: it spans at most five decades below the highest value, and needs one above 0
 */
export function valueRange(
  rows: { readonly time_s: readonly number[]; readonly lines: readonly RangedLine[] },
  span: { readonly start_s: number; readonly end_s: number },
  from_zero: boolean,
  log: boolean,
): [number, number] {
  let low = from_zero && !log ? 0 : Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let guestHigh = Number.NEGATIVE_INFINITY;
  for (const { values, guest } of rows.lines) {
    for (let i = 0; i < values.length; i++) {
      const v = values[i];
      const t = rows.time_s[i] ?? Number.NaN;
      if (v === null || v === undefined || t < span.start_s || t > span.end_s || (log && v <= 0)) continue;
      if (guest) guestHigh = Math.max(guestHigh, v);
      else {
        if (v < low) low = v;
        if (v > high) high = v;
      }
    }
  }
  if (log) {
    if (!(high > 0)) return [0.1, 1];
    const floor = Math.max(low, high * 1e-5);
    return [10 ** Math.floor(Math.log10(floor)), high * 1.6];
  }
  if (!(high >= low)) return [0, 1];
  const room = 0.08 * (high - low || Math.abs(high) || 1);
  const guests = rows.lines.some((l) => l.guest) ? 2.5 : 1;
  const whole = guestHigh <= high + guestRoom * (high - low) ? guestHigh + room : Number.NEGATIVE_INFINITY;
  return [from_zero && low >= 0 ? 0 : low - room, Math.max(high + room * guests, whole)];
}

/**
 * Powers of ten in a range; where there are more than `count`, every second, third … of them; where there are fewer
 * than two, also their doubles and fivefolds.
 */
export function logTicks(low: number, high: number, count: number): number[] {
  const first = Math.ceil(Math.log10(low) - 1e-9);
  const last = Math.floor(Math.log10(high) + 1e-9);
  if (last - first < 1) {
    const powers = [first - 1, first, last].map((p) => 10 ** p);
    const wanted = [...new Set(powers.flatMap((p) => [p, 2 * p, 5 * p]))].toSorted((a, b) => a - b);
    return wanted.filter((v) => v >= low * (1 - 1e-9) && v <= high * (1 + 1e-9));
  }
  const step = Math.max(1, Math.ceil((last - first + 1) / count));
  return Array.from(
    { length: Math.max(0, Math.floor((last - first) / step) + 1) },
    (_, i) => 10 ** (first + i * step),
  );
}
