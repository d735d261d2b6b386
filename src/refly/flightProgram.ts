import type { Controls } from './controls.ts';
import type { FlightState } from './flightState.ts';
import type { Start } from './start.ts';

/** When a step of a flight ends. */
export type Until =
  /** A burn: when the tank is empty (which ends every burn in any case). */
  | { readonly kind: 'empty' }
  | { readonly kind: 'duration'; readonly duration_s: number }
  /** From lift-off. */
  | { readonly kind: 'time'; readonly time_s: number }
  /** When a function of the state passes zero, rising (1), falling (−1) or either way (0). */
  | {
      readonly kind: 'condition';
      readonly value: (s: FlightState) => number;
      readonly direction: -1 | 0 | 1;
    };

/**
 * One step of a flight. Burns that follow each other are one burn with changed controls; `separate` drops the
 * present stage with what is left in it. Controls hold until others are given.
 */
export type FlightStep =
  | { readonly do: 'burn' | 'coast'; readonly until: Until; readonly controls?: Controls }
  | { readonly do: 'separate' };

/** Everything that decides a flight but the rocket and the world. */
export interface FlightProgram {
  readonly start: Start;
  readonly controls: Controls;
  readonly steps: readonly FlightStep[];
}

export interface FlightEvent {
  readonly name:
    | 'ignition'
    | 'lift-off'
    | 'cutoff'
    | 'separation'
    | 'booster-ignition'
    | 'booster-burnout'
    | 'booster-separation'
    | 'jettison'
    | 'touchdown';
  /** From lift-off. */
  readonly time_s: number;
  /** Stage or part concerned. */
  readonly subject: string | null;
  /** State vector at the event, before any mass is dropped (see `place`). */
  readonly state: Float64Array;
}

export interface FlightResult {
  /** `flown` = all steps done, `impact` = came down first, `stalled` = the integrator found no step. */
  readonly end: 'flown' | 'impact' | 'stalled';
  readonly time_s: number;
  readonly state: Float64Array;
  readonly events: readonly FlightEvent[];
}
