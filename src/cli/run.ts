import { version } from '../../package.json';
import { LossbookError } from '../errors.ts';
import { check } from './check.ts';
import { helpText } from './commands.ts';
import { compare } from './compare.ts';
import { complain } from './complain.ts';
import { open } from './open.ts';
import { parseCommand } from './parseCommand.ts';
import { refly } from './refly.ts';
import { review } from './review.ts';
import type { Terminal } from './terminal.ts';

const work = { review, compare, refly, check, open } as const;

/** Does what the arguments ask and returns the exit code; every error ends as a message. */
export async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  try {
    const asked = parseCommand(args);
    const name = asked.command?.name;
    if (asked.help) terminal.result(helpText(asked.command, version));
    else if (asked.version) terminal.result(`lossbook ${version}\n`);
    else if (name !== undefined && name in work)
      return await work[name as keyof typeof work](asked, terminal);
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
