import { LossbookError } from '../errors.ts';

/** Lets a caller follow the reading of a large log, and end it. */
export interface Watch {
  /** Hears how far reading has come, 0 to 1, some ten times a second. */
  readonly onProgress?: (share: number) => void;
  /** An `AbortSignal`, or anything else that says whether reading is to end. */
  readonly signal?: { readonly aborted: boolean };
}

/** Time between two reports, ms; also the longest stretch of work in which nobody else gets a turn. */
const TURN_MS = 50;

/** Keeps one reading's watcher informed. */
export class Pace {
  private readonly watch: Watch;
  private readonly file: string;
  private last = performance.now();

  constructor(watch: Watch, file: string) {
    this.watch = watch;
    this.file = file;
  }

  /** Whether somebody follows and has not heard for a while. */
  get due(): boolean {
    const { onProgress, signal } = this.watch;
    return (onProgress !== undefined || signal !== undefined) && performance.now() - this.last >= TURN_MS;
  }

  /**
   * Tells how far reading has come and lets other work have its turn, so that it can be shown and the signal can come.
   * @throws LossbookError `cancelled` once the signal says so.
   */
  async report(share: number): Promise<void> {
    this.watch.onProgress?.(Math.min(1, share));
    await new Promise<void>((resolve) => setTimeout(resolve, 0));
    this.last = performance.now();
    this.check();
  }

  /** @throws LossbookError `cancelled` where the signal says so. */
  check(): void {
    if (this.watch.signal?.aborted === true) throw new LossbookError('cancelled', {}, { file: this.file });
  }
}
