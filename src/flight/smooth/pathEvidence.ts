/** State: altitude, vertical speed, vertical acceleration; distance along the ground, horizontal speed, acceleration. */
export const SIZE = 6;
export const CHAIN = 3;

/** A channel's samples with the variance of each. */
export interface WeighedSamples {
  readonly t: Float64Array;
  readonly y: Float64Array;
  readonly variance: Float64Array;
}

/** What is known of a path; null where a channel is not logged. */
export interface PathEvidence {
  readonly altitude: WeighedSamples;
  readonly verticalSpeed: WeighedSamples | null;
  readonly horizontalSpeed: WeighedSamples | null;
  /** Length of the velocity. */
  readonly speed: WeighedSamples | null;
  /** Distance along the ground, as the horizontal speed gathers it. */
  readonly distance: WeighedSamples | null;
  /** Instants at which the acceleration jumps, rising. */
  readonly breaks: readonly number[];
  /** Instant until which the vehicle stands on its pad; null where the record starts in motion. */
  readonly restUntil_s: number | null;
  /** Speeds near the truth, about which the length of the velocity is taken as linear; on `query`. */
  readonly guess: { readonly verticalSpeed: Float64Array; readonly speed: Float64Array };
  /** Where the path is asked for, rising. */
  readonly query: Float64Array;
}
