import type { Dop853 } from './dop853.ts';
import type { Motion } from './motion.ts';
import type { RecordedName, Recorder } from './recorder.ts';

/**
 * Samples a flight at a steady rate and at both sides of everything that jumps: the end of each stretch and the
 * start of the next stand in two rows of one time.
 */
export class EdgeRecorder<N extends RecordedName> implements Recorder {
  readonly names: readonly N[];
  readonly rows: number[][] = [];
  private readonly period_s: number;
  private y = new Float64Array(0);

  constructor(names: readonly N[], period_s: number) {
    this.names = names;
    this.period_s = period_s;
  }

  take(solver: Dop853, until: number, motion: Motion, rateScratch: Float64Array): void {
    if (this.y.length !== solver.size) this.y = new Float64Array(solver.size);
    const begins = solver.previousTime;
    if (begins === motion.stretchStart_s) this.keep(solver, begins, motion, rateScratch);
    for (let k = Math.floor(begins / this.period_s) + 1; k * this.period_s < until; k++)
      this.keep(solver, k * this.period_s, motion, rateScratch);
    this.keep(solver, until, motion, rateScratch);
  }

  finish(): void {}

  /** What was recorded, one array a quantity. */
  columns(): Record<N, Float64Array> {
    const out = {} as Record<N, Float64Array>;
    this.names.forEach((name, i) => {
      out[name] = Float64Array.from(this.rows, (row) => row[i]!);
    });
    return out;
  }

  private keep(solver: Dop853, t: number, motion: Motion, rateScratch: Float64Array): void {
    const s = motion.observe(t, solver.at(t, this.y), rateScratch);
    this.rows.push(this.names.map((name) => s[name]));
  }
}
