import type { Analysis, StripName, Strips } from '../../review/types.ts';

/** Another flight, or the plan, drawn behind the flown curves, on its own times from lift-off. */
export interface Overlay {
  /** As it is written beside its curve: `as planned`, `Medlar, attempt 2`. */
  readonly name: string;
  readonly time_s: ArrayLike<number>;
  /** SI as in the strips; NaN = missing. */
  readonly channels: Readonly<Partial<Record<StripName, ArrayLike<number>>>>;
  /** Margin in m/s; null where it has none. */
  readonly margin: {
    readonly time_s: ArrayLike<number>;
    readonly values: ArrayLike<number | null>;
  } | null;
}

/** The values of all channels by name. */
export function channelsOf(strips: Strips): Overlay['channels'] {
  const entries = Object.entries(strips.channels) as [StripName, Strips['channels'][StripName]][];
  return Object.fromEntries(entries.flatMap(([name, s]) => (s === undefined ? [] : [[name, s.values]])));
}

/** A flight's curves as they are drawn behind another's. */
export function overlayOf(name: string, { review, strips }: Analysis): Overlay {
  const { time_s, margin } = review.budget.curves;
  const known = margin.some((v) => v !== null);
  return {
    name,
    time_s: strips.time_s,
    channels: channelsOf(strips),
    margin: known ? { time_s, values: margin } : null,
  };
}
