import { basename } from 'node:path';
import { LossbookError } from '../errors.ts';
import { reviewJson } from '../exchange/reviewJson.ts';
import { reviewText } from '../exchange/reviewText.ts';
import { type ReviewRequest, reviewFlight } from '../review/reviewFlight.ts';
import type { Analysis, Review } from '../review/types.ts';
import { readLength_m } from '../units/readLength.ts';
import { columnChoice } from './columnChoice.ts';
import { complain } from './complain.ts';
import { cardBeside, planBeside, readCardText, readInput } from './inputFiles.ts';
import { checkOutputs, writeOutputs } from './outputFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withProgress } from './progress.ts';
import type { Terminal } from './terminal.ts';

/** What holds for every log of one call. */
type Common = Pick<ReviewRequest, 'world' | 'targetAltitude_m' | 'map' | 'part'>;

/** `lossbook review`: one review after another; a log that cannot be reviewed does not stop the rest. */
export async function review(asked: Asked, terminal: Terminal): Promise<number> {
  const common = commonRequest(asked);
  checkFiles(asked);
  const json = asked.on('json');
  const documents: Review[] = [];
  let worst = 0;
  for (const path of asked.files) {
    try {
      const analysis = await reviewOne(path, asked, common, terminal);
      if (!json) terminal.result((documents.length === 0 ? '' : rule(terminal)) + text(analysis, terminal));
      documents.push(analysis.review);
      await writeOutputs(asked, analysis);
    } catch (error) {
      worst = Math.max(worst, complain(error, terminal, path));
      if (concernsAll(error)) break;
    }
  }
  if (json && asked.files.length > 1) terminal.result(reviewJson(documents));
  else if (json && documents[0] !== undefined) terminal.result(reviewJson(documents[0]));
  return worst;
}

function commonRequest(asked: Asked): Common {
  const [world, target, part] = [asked.value('world'), asked.value('target'), asked.value('part')];
  if (part !== undefined && !/^[1-9]\d{0,5}$/u.test(part)) {
    throw usage(`--part ${part} is not a whole number from 1 up`);
  }
  return {
    ...(world === undefined ? {} : { world }),
    ...(target === undefined ? {} : { targetAltitude_m: readLength_m(target) }),
    ...(part === undefined ? {} : { part: Number(part) }),
    map: asked.values('map').map(columnChoice),
  };
}

function checkFiles(asked: Asked): void {
  if (asked.files.length === 0) throw usage('no log is given');
  const given = [...asked.files, asked.value('mission'), asked.value('plan')];
  if (given.filter((path) => path === '-').length > 1) {
    throw usage('standard input (-) can be read only once');
  }
  checkOutputs(
    asked,
    given.filter((path) => path !== undefined),
  );
}

async function reviewOne(path: string, asked: Asked, common: Common, terminal: Terminal): Promise<Analysis> {
  const log = await readInput(path);
  const named = asked.value('mission');
  const beside = named === undefined ? await cardBeside(path) : null;
  const cardPath = named ?? beside;
  const card = cardPath === null ? undefined : await readCardText(cardPath);
  if (beside !== null)
    terminal.note(`${path}: its mission card ${basename(beside)} lies beside it and is taken`);
  const planNamed = asked.value('plan');
  const planThere = planNamed === undefined ? await planBeside(path) : null;
  const planPath = planNamed ?? planThere;
  const plan = planPath === null ? undefined : await readInput(planPath);
  if (planThere !== null)
    terminal.note(`${path}: its plan ${basename(planThere)} lies beside it and is taken`);
  const request = {
    log,
    ...common,
    ...(card === undefined ? {} : { card }),
    ...(plan === undefined ? {} : { plan }),
  };
  return withProgress(terminal, `reviewing ${log.name}`, () => reviewFlight(request));
}

function text({ review: document }: Analysis, terminal: Terminal): string {
  return reviewText(document, { width: terminal.width, colour: terminal.colour });
}

/** Stands between two reviews. */
function rule({ width }: Terminal): string {
  return `\n${'═'.repeat(width)}\n\n`;
}

/** A wrong word on the command line is wrong for every log: say it once. */
function concernsAll(error: unknown): boolean {
  return error instanceof LossbookError && error.exit === 2 && error.where.file === undefined;
}

function usage(reason: string): LossbookError {
  return new LossbookError('usage', { reason, command: 'review' });
}
