import { failureOf } from './failure.ts';
import type { Failure, Reply, TaskName, Tasks } from './protocol.ts';

/** Thrown by `ask` when the worker answers with a failure. */
export class TaskFailed extends Error {
  readonly failure: Failure;
  constructor(failure: Failure) {
    super(failure.what);
    this.failure = failure;
  }
}

/** A worker that does one task at a time. */
export interface Analyst {
  /**
   * Asks for one task. Asking again ends the task that still runs: its promise never settles.
   * @param onProgress gets a clause that says what is being done, and how far it has come, 0 to 1, where that is known
   * @throws TaskFailed
   */
  ask<T extends TaskName>(
    task: T,
    request: Tasks[T]['request'],
    onProgress?: (text: string, share: number | null) => void,
  ): Promise<Tasks[T]['result']>;
  /** Ends the task that runs, if one does; its promise never settles. What the worker had read is let go. */
  stop(): void;
}

/** The worker itself is started with the first task. */
export function createAnalyst(): Analyst {
  let worker: Worker | null = null;
  let lastId = 0;
  let busy = false;

  const end = () => {
    worker?.terminate();
    worker = null;
    busy = false;
  };

  return {
    ask(task, request, onProgress = () => {}) {
      if (busy) end();
      worker ??= new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
      const asked = worker;
      busy = true;
      lastId += 1;
      const id = lastId;
      return new Promise((resolve, reject) => {
        asked.onmessage = ({ data }: MessageEvent<Reply>) => {
          if (data.id !== id) return;
          if (data.kind === 'progress') return onProgress(data.text, data.share);
          busy = false;
          if (data.kind === 'done') resolve(data.result as Tasks[typeof task]['result']);
          else reject(new TaskFailed(data.failure));
        };
        asked.onerror = (event) => {
          // What an ended one still has to say is not of the one in its place.
          if (asked !== worker) return;
          end();
          reject(new TaskFailed(failureOf(event.message || 'its worker could not be started')));
        };
        asked.postMessage({ id, task, request });
      });
    },
    stop: end,
  };
}

/**
 * Asks a worker on behalf of work that may have been overtaken: then it asks no more, since asking would end the task of
 * the work that overtook it. The promise never settles, as that of a task that was ended.
 * @param stands false once the work has been overtaken
 */
export function askWhile({ ask }: Pick<Analyst, 'ask'>, stands: () => boolean): Analyst['ask'] {
  return (task, request, onProgress) =>
    stands() ? ask(task, request, onProgress) : new Promise(() => undefined);
}

let ofThePage = createAnalyst();

/** Asks the worker of the flight that is shown; see `Analyst.ask`. */
export const ask: Analyst['ask'] = (task, request, onProgress) => ofThePage.ask(task, request, onProgress);

export function stopAsking(): void {
  ofThePage.stop();
}

/** Makes another worker that of the flight shown: the one that has read its log already. */
export function adopt(analyst: Analyst): void {
  ofThePage.stop();
  ofThePage = analyst;
}
