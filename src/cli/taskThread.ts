import { parentPort, workerData } from 'node:worker_threads';
import { parseCommand } from './parseCommand.ts';
import { outcomeOf, type Wanted } from './tasks.ts';

/** What a thread is started with. */
export interface ThreadWork {
  readonly args: readonly string[];
  readonly wanted: Wanted;
}

/** In a thread of its own: reviews each path that is sent, one at a time, and sends back what became of it. */
export function serveTasks(): void {
  const { args, wanted } = workerData as ThreadWork;
  const asked = parseCommand(args);
  parentPort?.on('message', async (path: string) => {
    parentPort?.postMessage(await outcomeOf(path, asked, wanted));
  });
}
