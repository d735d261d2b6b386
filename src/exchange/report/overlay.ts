import type { StripName } from '../../review/types.ts';

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
