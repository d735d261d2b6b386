import { compareAttempts } from '../attempts/compare.ts';
import { type Attempt, type GroupBy, groupBys } from '../attempts/types.ts';
import { LossbookError } from '../errors.ts';
import { comparisonText } from '../exchange/comparisonText.ts';
import { plainJson } from '../exchange/plainJson.ts';
import { suggestion } from '../suggest.ts';
import { logFiles } from './logFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withCount } from './progress.ts';
import { commonRequest } from './reviewOne.ts';
import type { Terminal } from './terminal.ts';
import { outcomes, type Threads } from './threads.ts';

/** `lossbook compare`: several logs side by side; one that cannot be reviewed is told and left out. */
export async function compare(
  asked: Asked,
  terminal: Terminal,
  threads: Threads | null = null,
): Promise<number> {
  commonRequest(asked);
  const by = groupByOf(asked.value('by'));
  const paths = await logFiles(asked.files);
  if (paths.length < 2) throw usage('a comparison takes two logs or more');
  if (paths.filter((path) => path === '-').length > 1)
    throw usage('standard input (-) can be read only once');
  const attempts: Attempt[] = [];
  let worst = 0;
  let beside = 0;
  let plan: Attempt | null = null;
  for await (const outcome of withCount(terminal, paths.length, outcomes(paths, asked, 'attempt', threads))) {
    worst = Math.max(worst, outcome.exit);
    beside += outcome.beside;
    for (const note of outcome.notes) terminal.note(note);
    if (outcome.concernsAll) break;
    if (outcome.attempt !== undefined) attempts.push(outcome.attempt);
    plan ??= outcome.planAttempt ?? null;
  }
  if (beside > 0) terminal.note(`${beside} mission cards and plans lie beside their logs and are taken`);
  if (attempts.length === 0) return worst;
  const reference = referenceOf(asked.value('reference'), attempts, plan);
  const comparison = compareAttempts(attempts, { by, ...(reference === undefined ? {} : { reference }) });
  terminal.result(
    asked.on('json')
      ? plainJson(comparison)
      : comparisonText(comparison, { width: terminal.width, colour: terminal.colour }),
  );
  return worst;
}

/** `plan`, or the name of one of the logs. */
function referenceOf(
  word: string | undefined,
  attempts: readonly Attempt[],
  plan: Attempt | null,
): Attempt | string | undefined {
  if (word === undefined || attempts.some((a) => a.name === word)) return word;
  if (word === 'plan') {
    if (plan === null) throw usage('--reference plan needs a plan: give one with --plan');
    return plan;
  }
  const names = attempts.map((a) => a.name);
  throw usage(`--reference ${word} is none of these logs${suggestion(word, names)}`);
}

function groupByOf(word: string | undefined): GroupBy {
  if (word === undefined) return 'pilot';
  const found = groupBys.find((by) => by === word);
  if (found === undefined)
    throw usage(`--by ${word} is not one of ${groupBys.join(', ')}${suggestion(word, groupBys)}`);
  return found;
}

function usage(reason: string): LossbookError {
  return new LossbookError('usage', { reason, command: 'compare' });
}
