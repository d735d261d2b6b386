/** How a figure was come by. */
export type Basis = 'measured' | 'derived' | 'identified' | 'assumed' | 'unavailable';

/**
 * A number with its honesty: unit in the name of the field that holds it; low and high are the 95 % interval.
 * `unavailable` has nulls and a reason.
 */
export interface Figure {
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly basis: Basis;
  readonly reason?: string;
  /** What an assumption could move the value to (its own unit), named and separate from the interval. */
  readonly assumptions?: readonly { readonly what: string; readonly low: number; readonly high: number }[];
}
