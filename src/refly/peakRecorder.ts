import type { Dop853 } from './dop853.ts';
import type { Motion } from './motion.ts';
import type { Recorder } from './recorder.ts';

/** Below this part of the peak the vehicle has left the dense air, and sampling ends. */
const PAST_PEAK = 0.1;

/** Keeps the greatest dynamic pressure of an ascent, to the top of the parabola through three samples. */
export class PeakRecorder implements Recorder {
  dynamicPressure_Pa = 0;
  private readonly period_s: number;
  private next_s = 0;
  private before = 0;
  private last = 0;
  private y = new Float64Array(0);

  constructor(period_s = 1) {
    this.period_s = period_s;
  }

  /** Forgets the flight before. */
  reset(): void {
    this.dynamicPressure_Pa = 0;
    this.next_s = 0;
    this.before = 0;
    this.last = 0;
  }

  take(solver: Dop853, until: number, motion: Motion, rateScratch: Float64Array): void {
    if (this.y.length !== solver.size) this.y = new Float64Array(solver.size);
    while (this.next_s <= until && this.last >= PAST_PEAK * this.dynamicPressure_Pa) {
      if (this.next_s >= solver.previousTime)
        this.see(motion.observe(this.next_s, solver.at(this.next_s, this.y), rateScratch).dynamicPressure_Pa);
      this.next_s += this.period_s;
    }
  }

  finish(): void {}

  private see(now: number): void {
    const { before, last } = this;
    let top = now;
    if (last > before && last >= now) {
      const bend = before - 2 * last + now;
      top = bend < 0 ? last - (before - now) ** 2 / (8 * bend) : last;
    }
    this.dynamicPressure_Pa = Math.max(this.dynamicPressure_Pa, top);
    this.before = last;
    this.last = now;
  }
}
