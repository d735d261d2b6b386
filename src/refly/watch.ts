import type { Dop853 } from './dop853.ts';
import { crossed, locateEvent } from './eventLocation.ts';
import type { FlightState } from './flightState.ts';
import type { Motion } from './motion.ts';

/** A function of the flight whose passage through zero has to be found. */
export class Watch {
  active = false;
  direction: -1 | 0 | 1;
  measure: (s: FlightState) => number;
  /** Nearer to zero than this at a restart counts as zero (rounding at rest, the instant of the last crossing). */
  private readonly width: number;
  private before = 0;
  private after = 0;
  /** A passage just made is not made again: what starts at zero is not counted. */
  private readonly skipZero: boolean;

  constructor(measure: (s: FlightState) => number, direction: -1 | 0 | 1, width = 0, skipZero = false) {
    this.measure = measure;
    this.direction = direction;
    this.width = width;
    this.skipZero = skipZero;
  }

  /** Takes the value at the start of a stretch. */
  begin(s: FlightState): void {
    const value = this.measure(s);
    this.before = Math.abs(value) <= this.width ? (this.skipZero ? Number.NaN : 0) : value;
  }

  /** Takes the value at the end of a step; true when it passed zero on the way. */
  step(s: FlightState): boolean {
    this.after = this.measure(s);
    return crossed(this.before, this.after, this.direction);
  }

  /** After a step without any event. */
  keep(): void {
    this.before = this.after;
  }

  /** Time of the passage within the last step. */
  locate(solver: Dop853, motion: Motion, scratch: Float64Array, rateScratch: Float64Array): number {
    return locateEvent(
      solver,
      (t, y) => {
        motion.rate(t, y, rateScratch);
        return this.measure(motion.state);
      },
      this.before,
      this.after,
      scratch,
    );
  }
}
