import type { Dop853 } from './dop853.ts';
import type { FlightState } from './flightState.ts';
import type { Motion } from './motion.ts';

/** Takes samples while a flight is integrated. */
export interface Recorder {
  /** After each step: everything due up to `until` (s from lift-off), from the integrator's dense output. */
  take(solver: Dop853, until: number, motion: Motion, rateScratch: Float64Array): void;
  /** At the end of the flight. */
  finish(time: number, state: Float64Array, motion: Motion, rateScratch: Float64Array): void;
}

/** Recorded quantities of `FlightState`, numbers only. */
export type RecordedName = {
  [K in keyof FlightState]: FlightState[K] extends number ? K : never;
}[keyof FlightState];

/** Samples chosen quantities at a steady rate, and once more at the end of the flight. */
export class SteadyRecorder<N extends RecordedName> implements Recorder {
  readonly names: readonly N[];
  private readonly period_s: number;
  private readonly rows: number[][] = [];
  private next_s: number;
  private count = 0;
  private readonly start_s: number;
  private y = new Float64Array(0);

  /**
   * @param names quantities to keep
   * @param period_s time between samples
   * @param start_s first sample, from lift-off (negative while held down)
   */
  constructor(names: readonly N[], period_s: number, start_s = 0) {
    this.names = names;
    this.period_s = period_s;
    this.start_s = start_s;
    this.next_s = start_s;
  }

  take(solver: Dop853, until: number, motion: Motion, rateScratch: Float64Array): void {
    if (this.y.length !== solver.size) this.y = new Float64Array(solver.size);
    while (this.next_s <= until) {
      if (this.next_s >= solver.previousTime)
        this.keep(motion.observe(this.next_s, solver.at(this.next_s, this.y), rateScratch));
      this.count++;
      this.next_s = this.start_s + this.count * this.period_s;
    }
  }

  finish(time: number, state: Float64Array, motion: Motion, rateScratch: Float64Array): void {
    const last = this.rows.at(-1)?.[this.names.indexOf('time_s' as N)];
    if (last !== undefined && time - last < 1e-9) return;
    this.keep(motion.observe(time, state, rateScratch));
  }

  /** What was recorded, one array a quantity. */
  columns(): Record<N, Float64Array> {
    const out = {} as Record<N, Float64Array>;
    this.names.forEach((name, i) => {
      out[name] = Float64Array.from(this.rows, (row) => row[i]!);
    });
    return out;
  }

  private keep(s: FlightState): void {
    this.rows.push(this.names.map((name) => s[name] as number));
  }
}
