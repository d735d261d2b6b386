import type { Log } from '../log/types.ts';

/** What a plan's controls are laid out against. Time counts from lift-off; speed is relative to the ground. */
export type PlanAxis = 'time' | 'altitude' | 'speed';

/** Something that the plan sets a moment for. */
export interface PlanEvent {
  /** `ignition`, `cutoff`, `separation` steer the flight; other names are only compared. */
  readonly name: string;
  /** Stage or part concerned; null where the plan does not say. */
  readonly subject: string | null;
  /** Value of the plan's axis at it: s from lift-off, m or m/s. */
  readonly at: number;
}

/**
 * A planned flight's controls on a rising axis; equal neighbours on the axis make a step. SI and radians. The
 * plan is flown by the rocket of the card to know its states (METHODS §6).
 */
export interface Plan {
  /** File name, for messages and headings. */
  readonly name: string;
  /** `table` = sparse controls, `flight` = a profile with states or another flight's log. */
  readonly form: 'table' | 'flight';
  readonly axis: PlanAxis;
  readonly axisValues: Float64Array;
  /** Thrust axis above the local horizontal, rad; null where the plan says nothing of it. */
  readonly pitch_rad: Float64Array | null;
  /** Fraction of full; null where the plan says nothing of it. */
  readonly throttle: Float64Array | null;
  readonly events: readonly PlanEvent[];
  /** The profile or flight that the controls were taken from. */
  readonly log: Log | null;
  /** One sentence for each thing that was taken because the plan does not say it. */
  readonly assumed: readonly string[];
}

/** A computed ascent's controls against time from lift-off. Equal times in two rows make a step. */
export interface AscentPlan {
  readonly rows: readonly {
    readonly time_s: number;
    readonly pitch_rad: number;
    readonly throttle: number;
  }[];
  /** Names as in `PlanEvent`, the stage in brackets after them: `cutoff (booster)`. */
  readonly events: readonly { readonly name: string; readonly time_s: number }[];
}
