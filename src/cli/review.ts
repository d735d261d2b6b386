import { LossbookError } from '../errors.ts';
import { reviewJson } from '../exchange/reviewJson.ts';
import { reviewText } from '../exchange/reviewText.ts';
import type { Analysis, Review } from '../review/types.ts';
import { complain } from './complain.ts';
import { checkOutputs, writeOutputs } from './outputFiles.ts';
import type { Asked } from './parseCommand.ts';
import { commonRequest, concernsAll, reviewOne } from './reviewOne.ts';
import type { Terminal } from './terminal.ts';

/** `lossbook review`: one review after another; a log that cannot be reviewed does not stop the rest. */
export async function review(asked: Asked, terminal: Terminal): Promise<number> {
  const common = commonRequest(asked);
  checkFiles(asked);
  const json = asked.on('json');
  const documents: Review[] = [];
  let worst = 0;
  for (const path of asked.files) {
    try {
      const analysis = await reviewOne(path, asked, common, terminal, terminal.note);
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
