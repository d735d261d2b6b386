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

let worker: Worker | null = null;
let lastId = 0;
let abandon: (() => void) | null = null;

/**
 * Asks the worker for one task. Asking again ends the task that still runs: its promise never settles.
 * @param onProgress gets a clause that says what is being done
 * @throws TaskFailed
 */
export function ask<T extends TaskName>(
  task: T,
  request: Tasks[T]['request'],
  onProgress: (text: string) => void,
): Promise<Tasks[T]['result']> {
  abandon?.();
  worker ??= new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const asked = worker;
  lastId += 1;
  const id = lastId;
  abandon = () => {
    asked.terminate();
    worker = null;
  };
  return new Promise((resolve, reject) => {
    asked.onmessage = ({ data }: MessageEvent<Reply>) => {
      if (data.id !== id) return;
      if (data.kind === 'progress') return onProgress(data.text);
      abandon = null;
      if (data.kind === 'done') resolve(data.result);
      else reject(new TaskFailed(data.failure));
    };
    asked.onerror = (event) => {
      abandon?.();
      abandon = null;
      reject(new TaskFailed(failureOf(event.message || 'its worker could not be started')));
    };
    asked.postMessage({ id, task, request });
  });
}
