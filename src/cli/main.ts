import { setFlagsFromString } from 'node:v8';
import { isMainThread } from 'node:worker_threads';

/**
 * How much of a function must have run before the optimising compiler takes it up, in bytes of bytecode: nine times
 * the default of V8 11 (Node 20). A review of a small log is over before that work pays, and a large log soon gets
 * there. Later engines compile in more tiers and are left to themselves.
 */
if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=600000');

if (isMainThread) {
  const { run } = await import('./run.ts');
  const { processTerminal } = await import('./terminal.ts');
  // A reader that closes early (`lossbook review … | head`) ends the program without a word.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 3));
  process.stderr.on('error', () => undefined);
  const args = process.argv.slice(2);
  process.exitCode = await run(args, processTerminal(), { entry: new URL(import.meta.url), args });
} else {
  const { serveTasks } = await import('./taskThread.ts');
  serveTasks();
}
