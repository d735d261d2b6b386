import type { Dop853 } from './dop853.ts';
import type { Motion } from './motion.ts';
import type { Recorder } from './recorder.ts';
import type { Watch } from './watch.ts';

/** Why an integration ended: at its limit, at the passage of a watch, or because no step could be found. */
export type Crossing = Watch | 'limit' | 'stalled';

/** All watches of a flight; finds which of the active ones is passed first. Buffers are kept from call to call. */
export class Watchers {
  private readonly watches: readonly Watch[];
  private readonly solver: Dop853;
  private readonly motion: Motion;
  private readonly scratch: Float64Array;
  private readonly rateScratch: Float64Array;
  private readonly passed: Watch[] = [];
  /** Where the last integration ended, s. */
  time = 0;

  constructor(watches: readonly Watch[], solver: Dop853, motion: Motion, size: number) {
    this.watches = watches;
    this.solver = solver;
    this.motion = motion;
    this.scratch = new Float64Array(size);
    this.rateScratch = new Float64Array(size);
  }

  /** Integrates from a restarted solver to `limit` or to the first passage of a watch; puts the state there in `y`. */
  integrate(limit: number, y: Float64Array, recorder: Recorder | null): Crossing {
    const { solver, motion, rateScratch } = this;
    const s = motion.state;
    for (const w of this.watches) if (w.active) w.begin(s);
    let first: Watch | null = null;
    let at = limit;
    while (first === null && solver.time < limit) {
      if (!solver.advance(limit)) return 'stalled';
      at = solver.time;
      // Every watch looks at the step's end before any of them looks back into the step.
      let passed = 0;
      for (const w of this.watches) if (w.active && w.step(s)) this.passed[passed++] = w;
      for (let i = 0; i < passed; i++) {
        const t = this.passed[i]!.locate(solver, motion, this.scratch, rateScratch);
        if (first !== null && t >= at) continue;
        first = this.passed[i]!;
        at = t;
      }
      recorder?.take(solver, at, motion, rateScratch);
      if (first === null) for (const w of this.watches) w.keep();
    }
    this.time = at;
    y.set(solver.at(at, this.scratch));
    return first ?? 'limit';
  }
}
