import { pathToFileURL } from 'node:url';
import { isMainThread } from 'node:worker_threads';
import { hurryAsUsual, hurryLess } from './compilerPace.ts';
import { run } from './run.ts';
import { serveTasks } from './taskThread.ts';
import { processTerminal } from './terminal.ts';

/**
 * The whole program: does what the arguments ask, or in a thread of its own the tasks that it is sent.
 * @param entry path of the file that other threads are started from
 */
export async function program(entry: string): Promise<void> {
  if (!isMainThread) {
    hurryLess();
    return serveTasks();
  }
  // A reader that closes early (`lossbook review … | head`) ends the program without a word.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 3));
  process.stderr.on('error', () => undefined);
  const args = process.argv.slice(2);
  const terminal = processTerminal();
  hurryLess();
  process.exitCode = await run(args, terminal, { entry: pathToFileURL(entry), args });
  hurryAsUsual();
}
