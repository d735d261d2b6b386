import { LossbookError } from '../errors.ts';
import { checkedCardText, checkedLogText } from '../exchange/checkText.ts';
import { fileKind } from '../log/fileKind.ts';
import { readLog } from '../log/readLog.ts';
import { describeMission } from '../mission/describeCard.ts';
import { readMission } from '../mission/readCard.ts';
import { describePlan } from '../plan/describePlan.ts';
import { readPlan } from '../plan/readPlan.ts';
import { readInput } from './inputFiles.ts';
import type { Asked } from './parseCommand.ts';
import type { Terminal } from './terminal.ts';

const cardEnding = /\.mission\.json$/iu;

const planEnding = /\.plan\.(?:csv|json)$/iu;

/** `lossbook check`: what is understood of one card, plan or log, and what is missing. */
export async function check(asked: Asked, terminal: Terminal): Promise<number> {
  const [path, ...more] = asked.files;
  if (path === undefined || more.length > 0) {
    throw new LossbookError('usage', { reason: 'check takes one file', command: 'check' });
  }
  const { name, bytes } = await readInput(path);
  // A card too broken to be known by its content is known by its name.
  const kind = cardEnding.test(name) ? 'card' : planEnding.test(name) ? 'plan' : fileKind(bytes);
  if (kind === 'card') {
    const mission = readMission({ card: { name, text: new TextDecoder().decode(bytes) } });
    terminal.result(checkedCardText(name, describeMission(mission), terminal));
  } else if (kind === 'plan') {
    const plan = await readPlan(bytes, name, readMission({}));
    terminal.result(checkedCardText(name, describePlan(plan), terminal));
  } else {
    terminal.result(checkedLogText(await readLog(bytes, { name }), terminal));
  }
  return 0;
}
