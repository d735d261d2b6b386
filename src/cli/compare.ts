import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { bestAttemptOf } from '../attempts/bestAttempt.ts';
import { compareAttempts } from '../attempts/compare.ts';
import { distinctNames } from '../attempts/distinctNames.ts';
import { type Attempt, type Comparison, type GroupBy, groupBys } from '../attempts/types.ts';
import { LossbookError } from '../errors.ts';
import { comparisonText } from '../exchange/comparisonText.ts';
import { heldText } from '../exchange/comparisonWords.ts';
import { numberText } from '../exchange/figureText.ts';
import { plainJson } from '../exchange/plainJson.ts';
import { readRequest } from '../review/readRequest.ts';
import { suggestion } from '../suggest.ts';
import { errorCode } from './inputFiles.ts';
import { logFiles } from './logFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withCount, withProgress } from './progress.ts';
import { commonRequest, withRequest } from './reviewOne.ts';
import { withStitched } from './stitch.ts';
import { outcomeOf } from './tasks.ts';
import type { Terminal } from './terminal.ts';
import { outcomes, type Threads } from './threads.ts';

/** From so many logs on the memory is told. */
const MANY = 100;

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
  const inputs = [...paths, asked.value('mission'), asked.value('plan'), asked.value('reference')];
  const out = asked.value('report');
  if (out !== undefined && inputs.some((f) => f !== undefined && resolve(f) === resolve(out)))
    throw usage(`--report ${out} would overwrite an input`);
  const read: Attempt[] = [];
  const readPaths: string[] = [];
  let worst = 0;
  let beside = 0;
  let plan: Attempt | null = null;
  for await (const outcome of withCount(terminal, paths.length, outcomes(paths, asked, 'attempt', threads))) {
    worst = Math.max(worst, outcome.exit);
    beside += outcome.beside;
    for (const note of outcome.notes) terminal.note(note);
    if (outcome.concernsAll) break;
    if (outcome.attempt !== undefined) {
      read.push(outcome.attempt);
      readPaths.push(outcome.path);
    }
    plan ??= outcome.planAttempt ?? null;
  }
  if (beside > 0) terminal.note(`${beside} mission cards and plans lie beside their logs and are taken`);
  if (read.length === 0) return worst;
  const names = distinctNames(read.map((a) => a.name));
  const attempts = read.map((a, i): Attempt => ({ ...a, name: names[i]! }));
  const pathOf = new Map(names.map((name, i) => [name, readPaths[i]!]));
  const reference = await referenceOf(asked, terminal, { attempts, plan, first: readPaths[0]! });
  const set = compareAttempts(attempts, { by, ...(reference === undefined ? {} : { reference }) });
  const comparison = await withProgress(terminal, 'flying the best phases one after another', () =>
    withStitched(set, pathOf, asked),
  );
  if (out !== undefined) await writeReport(out, comparison);
  if (read.length >= MANY) {
    const most_MB = process.resourceUsage().maxRSS / 1024;
    terminal.note(`${heldText(comparison)} The program took ${numberText(most_MB, 0)} MB at most.`);
  }
  terminal.result(
    asked.on('json')
      ? plainJson(comparison)
      : comparisonText(comparison, { width: terminal.width, colour: terminal.colour }),
  );
  return worst;
}

async function writeReport(file: string, comparison: Comparison): Promise<void> {
  // A part of the program that is read only when it is asked for.
  const { comparisonReport } = await import('../exchange/report/comparisonReport.ts');
  try {
    await writeFile(file, comparisonReport(comparison));
  } catch (error) {
    throw new LossbookError('file-unwritable', { reason: errorCode(error) }, { file });
  }
}

/** `plan`, `best`, the name of one of the logs, or the path of another. */
async function referenceOf(
  asked: Asked,
  terminal: Terminal,
  {
    attempts,
    plan,
    first,
  }: { readonly attempts: readonly Attempt[]; readonly plan: Attempt | null; readonly first: string },
): Promise<Attempt | string | undefined> {
  const word = asked.value('reference');
  if (word === undefined || attempts.some((a) => a.name === word)) return word;
  if (word === 'plan') {
    if (plan === null) throw usage('--reference plan needs a plan: give one with --plan');
    return plan;
  }
  if (word === 'best') {
    if (first === '-') throw usage('--reference best needs a log that can be read again');
    return withProgress(terminal, 'searching the best ascent', () =>
      withRequest(
        first,
        asked,
        commonRequest(asked),
        () => undefined,
        async (request) => {
          const { log, mission } = await readRequest(request);
          return bestAttemptOf(log, mission);
        },
      ),
    );
  }
  const other = await outcomeOf(word, asked, 'attempt');
  if (other.attempt !== undefined) return other.attempt;
  const names = attempts.map((a) => a.name);
  throw usage(
    `--reference ${word} is none of these logs, nor another that can be reviewed${suggestion(word, names)}`,
  );
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
