import { version } from '../../package.json';
import { LossbookError } from '../errors.ts';
import { helpText } from './commands.ts';
import { complain } from './complain.ts';
import { parseCommand } from './parseCommand.ts';
import type { Terminal } from './terminal.ts';
import type { Threads } from './threads.ts';

/** The commands, each read only when it is asked for. */
const work = {
  review: async () => (await import('./review.ts')).review,
  compare: async () => (await import('./compare.ts')).compare,
  refly: async () => (await import('./refly.ts')).refly,
  check: async () => (await import('./check.ts')).check,
  open: async () => (await import('./open.ts')).open,
} as const;

/**
 * Does what the arguments ask and returns the exit code; every error ends as a message.
 * @param threads what other threads are started from for many logs; without it they are reviewed one by one
 */
export async function run(
  args: readonly string[],
  terminal: Terminal,
  threads: Threads | null = null,
): Promise<number> {
  try {
    const asked = parseCommand(args);
    const name = asked.command?.name;
    if (asked.help) terminal.result(helpText(asked.command, version));
    else if (asked.version) terminal.result(`lossbook ${version}\n`);
    else if (name !== undefined && name in work)
      return await (await work[name as keyof typeof work]())(asked, terminal, threads);
    else throw new LossbookError('usage', { reason: 'no command is given', command: '' });
    return 0;
  } catch (error) {
    return complain(error, terminal, pathIn(args, error));
  }
}

/** The argument that an error's bare file name came from. */
function pathIn(args: readonly string[], error: unknown): string | undefined {
  const file = error instanceof LossbookError ? error.where.file : undefined;
  return file === undefined ? undefined : args.find((arg) => arg.endsWith(file));
}
