import { writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { LossbookError } from '../errors.ts';
import { plainJson } from '../exchange/plainJson.ts';
import { reflyText } from '../exchange/reflyText.ts';
import { writePlan } from '../plan/writePlan.ts';
import { reflyRequest } from '../review/reflyRequest.ts';
import { errorCode } from './inputFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withProgress } from './progress.ts';
import { commonRequest, withRequest } from './reviewOne.ts';
import type { Terminal } from './terminal.ts';

/** `lossbook refly`: one flight flown again by its own controls, against a plan, and as well as it can be. */
export async function refly(asked: Asked, terminal: Terminal): Promise<number> {
  const [path] = asked.files;
  const out = asked.value('out');
  if (path === undefined || asked.files.length > 1) throw usage('give one log');
  if (out !== undefined && !asked.on('best')) throw usage('--out takes the best ascent: add --best');
  if (
    out !== undefined &&
    [path, asked.value('plan'), asked.value('mission')].some(
      (f) => f !== undefined && resolve(f) === resolve(out),
    )
  )
    throw usage(`--out ${out} would overwrite an input`);
  const { refly: document, bestPlan } = await withRequest(
    path,
    asked,
    commonRequest(asked),
    terminal.note,
    (request) => {
      const title = `flying ${request.log.name} again${asked.on('best') ? ' and searching its best ascent' : ''}`;
      return withProgress(terminal, title, (heard) =>
        reflyRequest({ ...request, ...heard, best: asked.on('best') }),
      );
    },
  );
  if (out !== undefined && bestPlan !== null) {
    try {
      await writeFile(out, writePlan(bestPlan));
    } catch (error) {
      throw new LossbookError('file-unwritable', { reason: errorCode(error) }, { file: out });
    }
    terminal.note(`the best ascent is written to ${out}`);
  }
  terminal.result(
    asked.on('json')
      ? plainJson(document)
      : reflyText(document, { width: terminal.width, colour: terminal.colour }),
  );
  return 'reason' in document.asFlown && document.best === null && document.againstPlan === null ? 4 : 0;
}

function usage(reason: string): LossbookError {
  return new LossbookError('usage', { reason, command: 'refly' });
}
