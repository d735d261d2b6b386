import { isMainThread } from 'node:worker_threads';
import { hurryAsUsual, hurryLess } from './compilerPace.ts';

if (isMainThread) {
  hurryLess();
  const { run } = await import('./run.ts');
  const { processTerminal } = await import('./terminal.ts');
  // A reader that closes early (`lossbook review … | head`) ends the program without a word.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 3));
  process.stderr.on('error', () => undefined);
  const args = process.argv.slice(2);
  process.exitCode = await run(args, processTerminal(), { entry: new URL(import.meta.url), args });
  hurryAsUsual();
} else {
  const { serveTasks } = await import('./taskThread.ts');
  serveTasks();
}
