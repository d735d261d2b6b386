import { type ExitCode, LossbookError } from '../errors.ts';
import type { Terminal } from './terminal.ts';

/**
 * Tells an error in one line on stderr and returns the exit code that it asks for. Faults of the program itself
 * are told without a stack trace.
 * @param path the file at work as the user wrote it; takes the place of its bare name in the message
 */
export function complain(error: unknown, terminal: Terminal, path?: string): ExitCode {
  if (error instanceof LossbookError) {
    const { file } = error.where;
    const named =
      path !== undefined && file !== undefined && path.endsWith(file) && error.message.startsWith(file);
    terminal.note(named ? path + error.message.slice(file.length) : error.message);
    return error.exit;
  }
  const reason = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  terminal.note(
    `${path === undefined ? '' : `${path}: `}a fault of lossbook itself (${reason}); please report it with the input.`,
  );
  return 3;
}
