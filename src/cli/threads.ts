import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { jsonLine } from '../exchange/plainJson.ts';
import { hurryAsUsual } from './compilerPace.ts';
import type { Asked } from './parseCommand.ts';
import { type Outcome, outcomeOf, type Wanted } from './tasks.ts';
import type { ThreadWork } from './taskThread.ts';

/** What other threads are started from: the program's own first file, and the arguments that it was given. */
export interface Threads {
  readonly entry: URL;
  readonly args: readonly string[];
}

/** Fewer logs than this are done before other threads have started. */
const WORTH_THREADS = 4;
/** So many logs a thread may be ahead of the one that is waited for, that results do not pile up. */
const AHEAD = 8;

/**
 * What became of each log, in the order of the paths, worked out on all cores where the logs are many. Whoever
 * takes the results sets the pace: no more than a few are kept waiting.
 * @param most threads at one time
 */
export async function* outcomes(
  paths: readonly string[],
  asked: Asked,
  wanted: Wanted,
  threads: Threads | null,
  most: number = availableParallelism(),
): AsyncGenerator<Outcome> {
  // Over many logs the compiler's work pays.
  if (paths.length >= WORTH_THREADS) hurryAsUsual();
  const count = Math.min(most, paths.length);
  if (threads === null || paths.length < WORTH_THREADS || count < 2 || paths.includes('-')) {
    for (const path of paths) yield await outcomeOf(path, asked, wanted);
    return;
  }
  const pool = Array.from({ length: count }, () => new TaskThread(threads, wanted));
  const idle = [...pool];
  const pending = new Map<number, Promise<Outcome>>();
  let next = 0;
  let limit = 0;
  /** Gives logs to the threads that have none. */
  const dispatch = (): void => {
    while (next < limit) {
      const thread = idle.pop();
      if (thread === undefined) return;
      const outcome = thread.outcome(paths[next]!).then((done) => {
        idle.push(thread);
        dispatch();
        return done;
      });
      pending.set(next++, outcome);
    }
  };
  try {
    for (let k = 0; k < paths.length; k++) {
      limit = Math.min(paths.length, k + AHEAD * count);
      dispatch();
      // Given out in order, so the one that is waited for always has its thread.
      const outcome = await pending.get(k)!;
      pending.delete(k);
      yield outcome;
    }
  } finally {
    await Promise.all(pool.map((thread) => thread.end()));
  }
}

/** One thread; should it die of a log, that log is told and another takes its place. */
class TaskThread {
  private readonly threads: Threads;
  private readonly wanted: Wanted;
  private worker: Worker | null = null;

  constructor(threads: Threads, wanted: Wanted) {
    this.threads = threads;
    this.wanted = wanted;
  }

  outcome(path: string): Promise<Outcome> {
    const workerData: ThreadWork = { args: this.threads.args, wanted: this.wanted };
    this.worker ??= new Worker(this.threads.entry, { workerData });
    const { worker } = this;
    return new Promise((resolve) => {
      const done = (outcome: Outcome): void => {
        worker.removeAllListeners();
        // A thread that dies while it waits is found dead at the next log.
        worker.on('error', () => undefined);
        resolve(outcome);
      };
      const died = (reason: string): void => {
        this.worker = null;
        const message = `${path}: the review broke off (${reason}); please report it with the input.`;
        const line = jsonLine({ log: path, error: { exit: 3, message } });
        done({
          path,
          notes: [message],
          beside: 0,
          exit: 3,
          concernsAll: false,
          ...(this.wanted === 'line' ? { line } : {}),
        });
      };
      worker.removeAllListeners();
      worker.once('message', done);
      worker.once('error', (error) => died(error.message));
      worker.once('exit', () => died('its thread ended'));
      worker.postMessage(path);
    });
  }

  async end(): Promise<void> {
    this.worker?.removeAllListeners();
    await this.worker?.terminate();
  }
}
