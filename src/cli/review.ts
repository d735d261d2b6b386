import { resolve } from 'node:path';
import { LossbookError } from '../errors.ts';
import { reviewJson } from '../exchange/reviewJson.ts';
import { reviewText } from '../exchange/reviewText.ts';
import type { Analysis } from '../review/types.ts';
import { complain } from './complain.ts';
import { logFiles } from './logFiles.ts';
import { checkOutputs, outputOptions, writeOutputs } from './outputFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withCount } from './progress.ts';
import { reviewLines } from './reviewLines.ts';
import { commonRequest, concernsAll, reviewOne } from './reviewOne.ts';
import { stdoutDrained, type Terminal } from './terminal.ts';
import { outcomes, type Threads } from './threads.ts';

/** `lossbook review`: one review after another; a log that cannot be reviewed does not stop the rest. */
export async function review(
  asked: Asked,
  terminal: Terminal,
  threads: Threads | null = null,
): Promise<number> {
  const common = commonRequest(asked);
  const paths = await logFiles(asked.files);
  checkFiles(asked, paths);
  if (asked.on('jsonl') || asked.on('resume')) return reviewLines(paths, asked, terminal, threads);
  if (asked.on('json') && paths.length > 1) return reviewArray(paths, asked, terminal, threads);
  let worst = 0;
  let told = 0;
  for (const path of paths) {
    try {
      const analysis = await reviewOne(path, asked, common, terminal, terminal.note);
      if (asked.on('json')) terminal.result(reviewJson(analysis.review));
      else terminal.result((told === 0 ? '' : rule(terminal)) + text(analysis, terminal));
      told++;
      await writeOutputs(asked, analysis);
    } catch (error) {
      worst = Math.max(worst, complain(error, terminal, path));
      if (concernsAll(error)) break;
    }
  }
  return worst;
}

/** Several reviews as one array, each written as it is done: thousands of them fit in no one text. */
async function reviewArray(
  paths: readonly string[],
  asked: Asked,
  terminal: Terminal,
  threads: Threads | null,
): Promise<number> {
  let told = 0;
  let worst = 0;
  let beside = 0;
  for await (const outcome of withCount(terminal, paths.length, outcomes(paths, asked, 'review', threads))) {
    worst = Math.max(worst, outcome.exit);
    beside += outcome.beside;
    for (const note of outcome.notes) terminal.note(note);
    if (outcome.concernsAll) break;
    if (outcome.review === undefined) continue;
    const document = reviewJson(outcome.review).trimEnd().replaceAll('\n', '\n  ');
    terminal.result(`${told === 0 ? '[' : ','}\n  ${document}`);
    told++;
    await stdoutDrained();
  }
  if (beside > 0) terminal.note(`${beside} mission cards and plans lie beside their logs and are taken`);
  terminal.result(told === 0 ? '[]\n' : '\n]\n');
  return worst;
}

function checkFiles(asked: Asked, paths: readonly string[]): void {
  if (asked.files.length === 0) throw usage('no log is given');
  if (paths.length === 0) throw usage(`there is no log in ${asked.files.join(', ')}`);
  const lines = asked.on('jsonl') || asked.on('resume');
  if (lines && asked.on('json')) throw usage('--json and --jsonl are two forms: give one');
  const files = outputOptions.find((option) => asked.on(option));
  if (lines && files !== undefined) throw usage(`--${files} is not written beside --jsonl`);
  const given = [...paths, asked.value('mission'), asked.value('plan')];
  if (given.filter((path) => path === '-').length > 1) {
    throw usage('standard input (-) can be read only once');
  }
  const inputs = given.filter((path) => path !== undefined);
  const resume = asked.value('resume');
  if (resume !== undefined && inputs.some((path) => path !== '-' && resolve(path) === resolve(resume)))
    throw usage(`--resume ${resume} would overwrite an input`);
  checkOutputs(asked, paths, inputs);
}

function text({ review: document }: Analysis, terminal: Terminal): string {
  return reviewText(document, { width: terminal.width, colour: terminal.colour });
}

/** Stands between two reviews. */
function rule({ width }: Terminal): string {
  return `\n${'═'.repeat(width)}\n\n`;
}

function usage(reason: string): LossbookError {
  return new LossbookError('usage', { reason, command: 'review' });
}
