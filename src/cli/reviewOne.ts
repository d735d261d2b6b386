import { basename } from 'node:path';
import { LossbookError } from '../errors.ts';
import type { ReviewRequest } from '../review/readRequest.ts';
import { reviewFlight } from '../review/reviewFlight.ts';
import type { Analysis } from '../review/types.ts';
import { readLength_m } from '../units/readLength.ts';
import { columnChoice } from './columnChoice.ts';
import { cardBeside, openLog, planBeside, readCardText, readInput } from './inputFiles.ts';
import type { Asked } from './parseCommand.ts';
import { withProgress } from './progress.ts';
import type { Terminal } from './terminal.ts';

/** What holds for every log of one call. */
export type Common = Pick<ReviewRequest, 'world' | 'targetAltitude_m' | 'map' | 'part'>;

/** Reads the options that hold for every log. @throws LossbookError `usage`. */
export function commonRequest(asked: Asked): Common {
  const [world, target, part] = [asked.value('world'), asked.value('target'), asked.value('part')];
  if (part !== undefined && !/^[1-9]\d{0,5}$/u.test(part)) {
    throw new LossbookError('usage', {
      reason: `--part ${part} is not a whole number from 1 up`,
      command: asked.command?.name ?? '',
    });
  }
  return {
    ...(world === undefined ? {} : { world }),
    ...(target === undefined ? {} : { targetAltitude_m: readLength_m(target) }),
    ...(part === undefined ? {} : { part: Number(part) }),
    map: asked.values('map').map(columnChoice),
  };
}

/** Reviews one log with the card and plan named, or those that lie beside it; `note` hears of the latter. */
export async function reviewOne(
  path: string,
  asked: Asked,
  common: Common,
  terminal: Terminal,
  note: (text: string) => void,
): Promise<Analysis> {
  return withRequest(path, asked, common, note, (request) =>
    withProgress(terminal, `reviewing ${request.log.name}`, (heard) =>
      reviewFlight({ ...request, ...heard }),
    ),
  );
}

/** Does the work on a log with the card and plan named, or those that lie beside it; `note` hears of the latter. */
export async function withRequest<T>(
  path: string,
  asked: Asked,
  common: Common,
  note: (text: string) => void,
  work: (request: ReviewRequest) => Promise<T>,
): Promise<T> {
  const log = await openLog(path);
  try {
    return await work({ log, ...(await besideLog(path, asked, note)), ...common });
  } finally {
    await log.close();
  }
}

async function besideLog(
  path: string,
  asked: Asked,
  note: (text: string) => void,
): Promise<Pick<ReviewRequest, 'card' | 'plan' | 'causes'>> {
  const named = asked.value('mission');
  const beside = named === undefined ? await cardBeside(path) : null;
  const cardPath = named ?? beside;
  const card = cardPath === null ? undefined : await readCardText(cardPath);
  if (beside !== null) note(`${path}: its mission card ${basename(beside)} lies beside it and is taken`);
  const planNamed = asked.value('plan');
  const planThere = planNamed === undefined ? await planBeside(path) : null;
  const planPath = planNamed ?? planThere;
  const plan = planPath === null ? undefined : await readInput(planPath);
  if (planThere !== null) note(`${path}: its plan ${basename(planThere)} lies beside it and is taken`);
  return {
    ...(asked.on('causes') ? { causes: true } : {}),
    ...(card === undefined ? {} : { card }),
    ...(plan === undefined ? {} : { plan }),
  };
}

/** A wrong word on the command line is wrong for every log: say it once. */
export function concernsAll(error: unknown): boolean {
  return error instanceof LossbookError && error.exit === 2 && error.where.file === undefined;
}
