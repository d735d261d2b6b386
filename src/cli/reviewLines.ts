import type { Asked } from './parseCommand.ts';
import { withCount } from './progress.ts';
import { openResults } from './resultFile.ts';
import { stdoutDrained, type Terminal } from './terminal.ts';
import { outcomes, type Threads } from './threads.ts';

/**
 * `lossbook review --jsonl`: one line of JSON for each log, `{"log", "review"}` or `{"log", "error"}`, as they are
 * done but in the logs' order; with `--resume` at the end of that file, for the logs that it does not tell of yet.
 */
export async function reviewLines(
  paths: readonly string[],
  asked: Asked,
  terminal: Terminal,
  threads: Threads | null,
): Promise<number> {
  const name = asked.value('resume');
  const file = name === undefined ? null : await openResults(name);
  const left = file === null ? paths : paths.filter((path) => !file.done.has(path));
  if (left.length < paths.length)
    terminal.note(`${paths.length - left.length} of ${paths.length} logs stand in ${name} already`);
  let worst = 0;
  let beside = 0;
  try {
    for await (const outcome of withCount(terminal, left.length, outcomes(left, asked, 'line', threads))) {
      worst = Math.max(worst, outcome.exit);
      beside += outcome.beside;
      for (const note of outcome.notes) terminal.note(note);
      if (outcome.concernsAll) break;
      if (outcome.line === undefined) continue;
      if (file !== null) await file.add(outcome.line);
      else {
        terminal.result(outcome.line);
        await stdoutDrained();
      }
    }
  } finally {
    await file?.close();
  }
  if (beside > 0) terminal.note(`${beside} mission cards and plans lie beside their logs and are taken`);
  return worst;
}
